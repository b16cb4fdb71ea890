package easewright.packaged;

import java.io.IOException;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.common.Uuid;

/**
 * An Apache Kafka broker as it is published, alone and its own controller (KRaft), in a process and
 * on a class path of its own. It can be killed and started again on what it had written.
 */
public final class Broker implements AutoCloseable {
  private static final Path CLASS_PATH = Path.of("target/broker.classpath");
  private static final Duration START = Duration.ofSeconds(60);

  private final Path folder;
  private final Path settings;
  private final int port;
  private Process process;

  private Broker(Path folder) throws IOException {
    this.folder = folder;
    this.settings = folder.resolve("broker.properties");
    this.port = freePort();
    String controller = "127.0.0.1:" + freePort();
    Files.write(
        settings,
        List.of(
            "process.roles=broker,controller",
            "node.id=1",
            "controller.quorum.voters=1@" + controller,
            "controller.listener.names=CONTROLLER",
            "listener.security.protocol.map=PLAINTEXT:PLAINTEXT,CONTROLLER:PLAINTEXT",
            "listeners=PLAINTEXT://" + address() + ",CONTROLLER://" + controller,
            "log.dirs=" + folder.resolve("log"),
            "auto.create.topics.enable=false",
            "offsets.topic.replication.factor=1",
            "offsets.topic.num.partitions=2",
            "transaction.state.log.replication.factor=1",
            "transaction.state.log.min.isr=1",
            "transaction.state.log.num.partitions=2",
            "transaction.abort.timed.out.transaction.cleanup.interval.ms=1000",
            "group.initial.rebalance.delay.ms=100"));
  }

  /**
   * Starts a broker that has nothing yet, and waits until it answers.
   *
   * @param folder an empty folder for all it writes
   */
  public static Broker start(Path folder) throws IOException, InterruptedException {
    Broker broker = new Broker(folder);
    int formatted =
        broker
            .java(
                "kafka.tools.StorageTool",
                "format",
                "-t",
                Uuid.randomUuid().toString(),
                "-c",
                broker.settings.toString())
            .waitFor();
    if (formatted != 0) {
      throw new IllegalStateException("The broker's storage can't be formatted: " + broker.log());
    }
    broker.startAgain();
    return broker;
  }

  /** Where it listens: {@code host:port}. */
  public String address() {
    return "127.0.0.1:" + port;
  }

  /** SIGKILL, at once. */
  public void kill() throws InterruptedException {
    process.destroyForcibly().waitFor();
  }

  /** Starts it on what it had written, and waits until it answers. */
  public void startAgain() throws IOException, InterruptedException {
    process = java("kafka.Kafka", settings.toString());
    long end = System.nanoTime() + START.toNanos();
    while (!listens()) {
      if (!process.isAlive() || System.nanoTime() > end) {
        throw new IllegalStateException("The broker did not start: " + log());
      }
      Thread.sleep(50);
    }
    try (Admin admin = Admin.create(Map.of("bootstrap.servers", address()))) {
      admin.describeCluster().nodes().get(START.toSeconds(), TimeUnit.SECONDS);
    } catch (ExecutionException | TimeoutException e) {
      throw new IllegalStateException("The broker did not answer: " + log(), e);
    }
  }

  private boolean listens() {
    try (Socket socket = new Socket("127.0.0.1", port)) {
      return socket.isConnected();
    } catch (IOException notYet) {
      return false;
    }
  }

  @Override
  public void close() throws InterruptedException {
    kill();
  }

  private Process java(String mainClass, String... arguments) throws IOException {
    if (!Files.exists(CLASS_PATH)) {
      throw new IllegalStateException("No " + CLASS_PATH + "; run: mvn antrun:run@broker");
    }
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-Xmx384m", "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1"));
    command.addAll(List.of("-cp", Files.readString(CLASS_PATH).strip(), mainClass));
    command.addAll(List.of(arguments));
    return new ProcessBuilder(command)
        .redirectErrorStream(true)
        .redirectOutput(ProcessBuilder.Redirect.appendTo(logFile().toFile()))
        .start();
  }

  private Path logFile() {
    return folder.resolve("broker.log");
  }

  private String log() throws IOException {
    return Files.readString(logFile());
  }

  private static int freePort() throws IOException {
    try (ServerSocket socket = new ServerSocket(0)) {
      return socket.getLocalPort();
    }
  }
}
