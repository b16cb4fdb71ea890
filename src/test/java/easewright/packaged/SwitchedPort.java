package easewright.packaged;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/** One address before several servers: it leads to one of them, or to silence. */
final class SwitchedPort implements AutoCloseable {
  private static final int BUFFER = 8192;

  private final ServerSocket listening;
  private final List<Socket> open = new CopyOnWriteArrayList<>();
  private volatile int target;
  private volatile boolean silent;

  SwitchedPort(int target) throws IOException {
    this.target = target;
    listening = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    run(this::accept);
  }

  int port() {
    return listening.getLocalPort();
  }

  /** Leads to another server; whoever is connected to the former is cut off. */
  void leadTo(int port) {
    target = port;
    open.forEach(SwitchedPort::close);
    open.clear();
  }

  /** Swallows whatever is sent, in either direction, as a cable that was pulled. */
  void silence(boolean now) {
    silent = now;
  }

  private void accept() {
    while (!listening.isClosed()) {
      try {
        Socket asking = listening.accept();
        open.add(asking);
        Socket server = new Socket(InetAddress.getLoopbackAddress(), target);
        open.add(server);
        run(() -> pass(asking, server));
        run(() -> pass(server, asking));
      } catch (IOException gone) {
        // The server is not there, or the test is over: whoever asks is cut off or waits.
        if (!silent) {
          open.forEach(SwitchedPort::close);
          open.clear();
        }
      }
    }
  }

  private void pass(Socket from, Socket to) {
    byte[] bytes = new byte[BUFFER];
    try {
      InputStream in = from.getInputStream();
      OutputStream out = to.getOutputStream();
      for (int read = in.read(bytes); read >= 0; read = in.read(bytes)) {
        if (!silent) {
          out.write(bytes, 0, read);
          out.flush();
        }
      }
    } catch (IOException gone) {
      // Either side has ended.
    }
    close(from);
    close(to);
  }

  private static void run(Runnable work) {
    Thread thread = new Thread(work, "switched port");
    thread.setDaemon(true);
    thread.start();
  }

  private static void close(Socket socket) {
    try {
      socket.close();
    } catch (IOException closed) {
      // It is.
    }
  }

  @Override
  public void close() throws IOException {
    listening.close();
    open.forEach(SwitchedPort::close);
  }
}
