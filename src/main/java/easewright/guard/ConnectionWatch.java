package easewright.guard;

import io.netty.bootstrap.ChannelInitializerExtension;
import io.netty.channel.Channel;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelInboundHandlerAdapter;
import io.netty.channel.ChannelPipeline;
import io.netty.handler.codec.http.HttpRequestDecoder;

/**
 * Registers every accepted connection with {@link ConnectionBounds}. Netty finds this class through
 * the service loader if the system property {@code io.netty.bootstrap.extensions} is "serviceload":
 * no filter of the router sees a connection before its first request.
 */
public final class ConnectionWatch extends ChannelInitializerExtension {
  @Override
  public void postInitializeServerChildChannel(Channel child) {
    child.pipeline().addFirst(new Bytes(ConnectionBounds.PROCESS.open(child)));
  }

  /** Sees bytes as they arrive, and adds {@link RequestWatch} behind the HTTP decoder. */
  private static final class Bytes extends ChannelInboundHandlerAdapter {
    private final Connection connection;
    private boolean requestsWatched;

    Bytes(Connection connection) {
      this.connection = connection;
    }

    @Override
    public void channelRead(ChannelHandlerContext context, Object bytes) {
      ChannelPipeline pipeline = context.pipeline();
      boolean ofRequests = pipeline.context(HttpRequestDecoder.class) != null;
      if (!requestsWatched && ofRequests) {
        pipeline.addBefore(pipeline.lastContext().name(), null, new RequestWatch(connection));
        requestsWatched = true;
      }
      connection.read(ofRequests);
      context.fireChannelRead(bytes);
    }
  }
}
