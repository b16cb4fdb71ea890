package easewright.http;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetSocketAddress;
import java.net.StandardSocketOptions;
import java.nio.ByteBuffer;
import java.nio.channels.SocketChannel;

/** One request to /v1/fittings over a raw socket, chunk by chunk (RFC 9112 section 7.1). */
final class RawExchange implements AutoCloseable {
  private static final int STUCK_AFTER_MS = 3000;

  private final SocketChannel channel;
  private final InputStream in;
  private String status;
  private int leftOfChunk;
  private ByteBuffer unsent = ByteBuffer.allocate(0);

  RawExchange(int port) throws IOException {
    channel = SocketChannel.open();
    channel.setOption(StandardSocketOptions.SO_RCVBUF, 32 * 1024);
    channel.connect(new InetSocketAddress("localhost", port));
    in = new BufferedInputStream(channel.socket().getInputStream());
  }

  void head(String bodyHeader) throws IOException {
    head("application/x-ndjson", bodyHeader);
  }

  void head(String mediaType, String bodyHeader) throws IOException {
    send(
        "POST /v1/fittings HTTP/1.1\r\nHost: localhost\r\nContent-Type: "
            + mediaType
            + "\r\n"
            + bodyHeader
            + "\r\n\r\n");
  }

  void chunk(String text) throws IOException {
    send(asChunk(text));
  }

  void lastChunk() throws IOException {
    send("0\r\n\r\n");
  }

  /** Number of chunks of this text accepted before none was for three seconds. */
  int chunksUntilStuck(String text, int most) throws IOException, InterruptedException {
    channel.configureBlocking(false);
    int sent = 0;
    long lastTaken = System.currentTimeMillis();
    while (sent < most && System.currentTimeMillis() - lastTaken < STUCK_AFTER_MS) {
      if (!unsent.hasRemaining()) {
        unsent = ByteBuffer.wrap(asChunk(text).getBytes(UTF_8));
        sent++;
      }
      if (channel.write(unsent) > 0) {
        lastTaken = System.currentTimeMillis();
      } else {
        Thread.sleep(20);
      }
    }
    channel.configureBlocking(true);
    return sent;
  }

  String status() throws IOException {
    if (status == null) {
      status = textLine();
      while (!textLine().isEmpty()) {
        // headers
      }
    }
    return status;
  }

  /** The next line of the response body; null at its end. */
  String answerLine() throws IOException {
    status();
    ByteArrayOutputStream line = new ByteArrayOutputStream();
    for (int sign = bodyByte(); sign != '\n'; sign = bodyByte()) {
      if (sign < 0) {
        return line.size() == 0 ? null : line.toString(UTF_8);
      }
      line.write(sign);
    }
    return line.toString(UTF_8);
  }

  private int bodyByte() throws IOException {
    if (leftOfChunk == 0) {
      leftOfChunk = Integer.parseInt(textLine(), 16);
      if (leftOfChunk == 0) {
        return -1;
      }
    }
    int sign = in.read();
    if (--leftOfChunk == 0) {
      textLine();
    }
    return sign;
  }

  private String textLine() throws IOException {
    StringBuilder line = new StringBuilder();
    for (int sign = in.read(); sign != '\n' && sign >= 0; sign = in.read()) {
      line.append((char) sign);
    }
    return line.toString().strip();
  }

  private static String asChunk(String text) {
    return Integer.toHexString(text.getBytes(UTF_8).length) + "\r\n" + text + "\r\n";
  }

  private void send(String text) throws IOException {
    ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(UTF_8));
    while (bytes.hasRemaining()) {
      channel.write(bytes);
    }
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
