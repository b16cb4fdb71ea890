package easewright.modelreader;

import java.net.http.HttpResponse.BodySubscriber;
import java.net.http.HttpResponse.BodySubscribers;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.Flow.Subscription;

/** Collects the body of a response up to a size; a longer one ends with {@link TooLong}. */
final class BoundedBody implements BodySubscriber<byte[]> {
  private final BodySubscriber<byte[]> whole = BodySubscribers.ofByteArray();
  private final long most;
  private Subscription subscription;
  private long length;
  private boolean ended;

  /** The body is longer than is read. */
  static final class TooLong extends RuntimeException {
    private static final long serialVersionUID = 1;
  }

  /**
   * @param most bytes
   */
  BoundedBody(long most) {
    this.most = most;
  }

  @Override
  public CompletionStage<byte[]> getBody() {
    return whole.getBody();
  }

  @Override
  public void onSubscribe(Subscription to) {
    subscription = to;
    whole.onSubscribe(to);
  }

  @Override
  public void onNext(List<ByteBuffer> part) {
    length += part.stream().mapToLong(ByteBuffer::remaining).sum();
    if (ended) {
      return;
    }
    if (length > most) {
      ended = true;
      subscription.cancel();
      whole.onError(new TooLong());
    } else {
      whole.onNext(part);
    }
  }

  @Override
  public void onError(Throwable broken) {
    whole.onError(broken);
  }

  @Override
  public void onComplete() {
    whole.onComplete();
  }
}
