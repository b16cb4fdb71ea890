package easewright.guard;

import io.netty.bootstrap.ChannelInitializerExtension;
import io.netty.channel.Channel;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelInboundHandlerAdapter;
import io.netty.channel.ChannelPipeline;
import io.netty.handler.codec.http.HttpRequestDecoder;

/**
 * Puts every accepted connection under {@link ConnectionBounds}. Netty finds it by the service
 * loader where the system property {@code io.netty.bootstrap.extensions} is "serviceload": no
 * filter of the router sees a connection before its first request.
 */
public final class ConnectionWatch extends ChannelInitializerExtension {
  @Override
  public void postInitializeServerChildChannel(Channel child) {
    child.pipeline().addFirst(new Bytes(ConnectionBounds.PROCESS.open(child)));
  }

  /** Sees bytes as they come, and puts {@link RequestWatch} behind what makes requests of them. */
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
