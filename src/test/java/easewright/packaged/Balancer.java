package easewright.packaged;

import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * HAProxy before several instances of the service, in turn for each request; it leaves out
 * whichever is not ready, and sends anew only what reached no instance.
 */
final class Balancer implements AutoCloseable {
  private static final String NEEDED =
      "Several instances need HAProxy before them, on Debian: apt-get install haproxy";
  private static final Path PROGRAM = Path.of("/usr/sbin/haproxy");

  private final Process process;
  private final int port;

  private Balancer(Process process, int port) {
    this.process = process;
    this.port = port;
  }

  /** Whether it is there; says so when not, and fails in CI. */
  static boolean canRun() {
    if (Files.isExecutable(PROGRAM)) {
      return true;
    }
    if ("true".equals(System.getenv("CI"))) {
      fail(NEEDED);
    }
    System.out.println("Skipped: " + NEEDED);
    return false;
  }

  /**
   * Starts it.
   *
   * @param folder for its configuration
   */
  static Balancer before(Path folder, List<PackagedService> instances)
      throws IOException, InterruptedException {
    int port = freePort();
    StringBuilder servers = new StringBuilder();
    for (int i = 0; i < instances.size(); i++) {
      servers.append(
          "  server i%d %s check port %d inter 200 fall 1 rise 1%n"
              .formatted(
                  i,
                  instances.get(i).address().getAuthority(),
                  instances.get(i).management().getPort()));
    }
    String configuration =
        """
        defaults
          mode http
          timeout connect 1s
          timeout client 20s
          timeout server 20s
          option redispatch 1
          retries 3
        frontend all
          bind 127.0.0.1:%d
          default_backend instances
        backend instances
          balance roundrobin
          option httpchk GET /q/health/ready
        %s"""
            .formatted(port, servers);
    Path file = Files.writeString(folder.resolve("haproxy.cfg"), configuration);
    Process process =
        new ProcessBuilder(PROGRAM.toString(), "-db", "-q", "-f", file.toString())
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve("haproxy.log").toFile())
            .start();
    Balancer balancer = new Balancer(process, port);
    balancer.awaitListening();
    return balancer;
  }

  URI address() {
    return URI.create("http://127.0.0.1:" + port);
  }

  @Override
  public void close() {
    process.destroyForcibly();
  }

  private void awaitListening() throws InterruptedException {
    for (int i = 0; i < 100; i++) {
      try (Socket there = new Socket(InetAddress.getLoopbackAddress(), port)) {
        return;
      } catch (IOException notYet) {
        Thread.sleep(50);
      }
    }
    throw new IllegalStateException("The balancer does not listen");
  }

  private static int freePort() throws IOException {
    try (ServerSocket any = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return any.getLocalPort();
    }
  }
}
