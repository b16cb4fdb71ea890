package easewright.guard;

import io.netty.channel.Channel;
import io.netty.channel.ChannelOutboundBuffer;
import java.net.InetSocketAddress;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * State of a client connection: how many requests are in progress, since when the head or the body
 * of a request has been arriving, and since when a response has waited to be read. Times are from
 * {@link System#nanoTime()}; 0 stands for "not now".
 */
final class Connection {
  /**
   * Bytes per second of a bulk request, below which the client sends more slowly than we answer.
   */
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

  /** Whether both were accepted by the same server (public or management). */
  boolean isOfServerOf(Connection other) {
    return channel.parent() == other.channel.parent();
  }

  String address() {
    return address;
  }

  long lastReadNs() {
    return lastReadNs;
  }

  /** Bytes of responses waiting to be sent, as of the last call of {@link #sample}. */
  long waitingBytes() {
    return waitingBytes;
  }

  /** Since when any response has been waiting. */
  long waitingSinceNs() {
    return waitingSinceNs;
  }

  boolean isIdle() {
    return requests.get() == 0;
  }

  /**
   * Records that bytes have arrived.
   *
   * @param ofRequests whether they belong to HTTP/1 requests rather than another protocol
   */
  void read(boolean ofRequests) {
    lastReadNs = System.nanoTime();
    if (ofRequests && headSinceNs == 0 && isIdle()) {
      headSinceNs = lastReadNs;
    }
  }

  /**
   * Records that the head of a request has arrived.
   *
   * @return the number of requests in progress, including this one
   */
  int begun() {
    headSinceNs = 0;
    bodyBytes = 0;
    bodySinceNs = System.nanoTime();
    return requests.incrementAndGet();
  }

  /**
   * Records that more of the body of the latest request has arrived.
   *
   * @param last whether the body is complete
   */
  void bodyRead(int bytes, boolean last) {
    bodyBytes += bytes;
    if (last) {
      bodySinceNs = 0;
    }
  }

  /**
   * Whether the latest request is still waiting for the client to send the rest of the body. A bulk
   * request is answered while it arrives; it waits for its client only if that sends or reads more
   * slowly than a slow phone would.
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

  /** Records that a response was written completely. */
  void answered() {
    requests.decrementAndGet();
  }

  void close() {
    channel.close();
  }

  /**
   * Samples the bytes waiting to be sent.
   *
   * @return whether the connection has exceeded the time limit for completing a request head or
   *     reading a response
   */
  boolean sample(long nowNs, long patienceNs) {
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
