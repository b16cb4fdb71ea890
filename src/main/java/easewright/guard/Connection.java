package easewright.guard;

import io.netty.channel.Channel;
import io.netty.channel.ChannelOutboundBuffer;
import java.net.InetSocketAddress;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * What is known of a client's connection: the requests under way on it, since when the head or the
 * body of a request has been arriving, and since when an answer waits to be read. Times are of
 * {@link System#nanoTime()}; 0 stands for "not now".
 */
final class Connection {
  /** Bytes a second of a request of many lines, below which its client is slower than an answer. */
  private static final long SLOW_LINES = 1024;

  private static final long SECOND_NS = 1_000_000_000;

  private final Channel channel;
  private final String address;
  private final AtomicInteger requests = new AtomicInteger();
  private volatile long lastReadNs = System.nanoTime();
  private volatile long headSinceNs;
  private volatile long bodySinceNs;
  private volatile long bodyBytes;
  private volatile long waitingBytes;
  private volatile long waitingSinceNs;
  private volatile long stillSinceNs;

  Connection(Channel channel) {
    this.channel = channel;
    this.address =
        channel.remoteAddress() instanceof InetSocketAddress from && from.getAddress() != null
            ? from.getAddress().getHostAddress()
            : "";
  }

  Channel channel() {
    return channel;
  }

  /** Whether both were accepted by the same server: the endpoints', or the operator's. */
  boolean isOfServerOf(Connection other) {
    return channel.parent() == other.channel.parent();
  }

  String address() {
    return address;
  }

  long lastReadNs() {
    return lastReadNs;
  }

  /** Bytes of answers that wait to be sent, as {@link #look} last saw them. */
  long waitingBytes() {
    return waitingBytes;
  }

  /** Since when any answer has waited. */
  long waitingSinceNs() {
    return waitingSinceNs;
  }

  boolean isIdle() {
    return requests.get() == 0;
  }

  /**
   * Some bytes have come.
   *
   * @param ofRequests whether they are of requests in HTTP/1, and of no other protocol
   */
  void read(boolean ofRequests) {
    lastReadNs = System.nanoTime();
    if (ofRequests && headSinceNs == 0 && isIdle()) {
      headSinceNs = lastReadNs;
    }
  }

  /**
   * The head of a request has arrived.
   *
   * @return how many requests are under way with it
   */
  int begun() {
    headSinceNs = 0;
    bodyBytes = 0;
    bodySinceNs = System.nanoTime();
    return requests.incrementAndGet();
  }

  /**
   * More of the body of the latest request has arrived.
   *
   * @param last whether nothing is missing any more
   */
  void bodyRead(int bytes, boolean last) {
    bodyBytes += bytes;
    if (last) {
      bodySinceNs = 0;
    }
  }

  /**
   * Whether the client keeps its latest request waiting for the rest of the body. One of many lines
   * is answered while it arrives, and waits for its client only if that sends less, or reads less,
   * than a slow telephone does.
   *
   * @param patienceNs how long a body may take
   */
  boolean isLate(long nowNs, long patienceNs, boolean ofLines) {
    long since = bodySinceNs;
    if (since == 0) {
      return false;
    }
    long took = nowNs - since;
    if (!ofLines) {
      return took > patienceNs;
    }
    boolean onClient = channel.config().isAutoRead() || !channel.isWritable();
    return onClient && took > 2 * SECOND_NS && bodyBytes < SLOW_LINES * (took / SECOND_NS);
  }

  /** An answer was written to its end. */
  void answered() {
    requests.decrementAndGet();
  }

  void close() {
    channel.close();
  }

  /**
   * Looks what waits to be sent.
   *
   * @return whether the connection has kept us waiting longer than it may: for the rest of a head,
   *     or for an answer to be read
   */
  boolean look(long nowNs, long patienceNs) {
    ChannelOutboundBuffer buffer = channel.unsafe().outboundBuffer();
    long bytes = buffer == null ? 0 : buffer.totalPendingWriteBytes();
    if (bytes == 0) {
      waitingSinceNs = 0;
      stillSinceNs = 0;
    } else {
      waitingSinceNs = waitingBytes == 0 ? nowNs : waitingSinceNs;
      stillSinceNs = bytes == waitingBytes ? stillSinceNs : nowNs;
    }
    waitingBytes = bytes;
    long head = headSinceNs;
    return head != 0 && nowNs - head > patienceNs || bytes > 0 && nowNs - stillSinceNs > patienceNs;
  }
}
