package easewright.packaged;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The packaged service, started on a free port and ready to answer until it is closed. */
public final class PackagedService implements AutoCloseable {
  private static final Path TARGET = Path.of("target");
  private static final Pattern LISTENING =
      Pattern.compile(
          "Listening on: http://[^ ]*:(\\d+)\\. Management interface .*http://[^ ]*:(\\d+)");
  private static final Duration START = Duration.ofSeconds(90);
  private static final Duration STOP = Duration.ofSeconds(15);

  private final Process process;
  private final StringBuffer log = new StringBuffer();
  private final CompletableFuture<Integer> port = new CompletableFuture<>();
  private final CompletableFuture<Integer> managementPort = new CompletableFuture<>();

  private PackagedService(Process process) {
    this.process = process;
    Thread reader = new Thread(this::readLog, "log of the packaged service");
    reader.setDaemon(true);
    reader.start();
  }

  /**
   * Starts the jar and waits until the service says that it is ready.
   *
   * @param options for the Java machine, as {@code -Deasewright.rules=rules}; they win over ours
   * @throws IllegalStateException when there is no jar, or it does not get ready within 90 seconds;
   *     the message holds the log
   */
  public static PackagedService start(String... options) {
    PackagedService service = begin(options);
    service.awaitReady();
    return service;
  }

  /** The same, but waits only until it listens: it may have a reason not to be ready. */
  static PackagedService begin(String... options) {
    List<String> command = new ArrayList<>();
    command.add(TARGET.resolve("easewright").toString());
    command.add("-Dquarkus.http.port=0");
    command.add("-Dquarkus.management.port=0");
    // Two services can't hold one store, and no test is to find the clinics of another.
    command.add("-Deasewright.clinic.store=" + TARGET.resolve("stores/" + UUID.randomUUID()));
    // Tests ask more than one place may by default.
    command.add("-Deasewright.limit.answers=1000000 in 1M");
    command.add("-Deasewright.limit.lines=1000000 in 1H");
    command.addAll(List.of(options));
    return begin(new ProcessBuilder(command));
  }

  /** The same for a program that starts the service by itself, as an installed one does. */
  static PackagedService begin(ProcessBuilder program) {
    try {
      PackagedService service = new PackagedService(program.redirectErrorStream(true).start());
      service.awaitListening();
      return service;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Where it listens, without a path: {@code http://127.0.0.1:port}. */
  public URI address() {
    return URI.create("http://127.0.0.1:" + port.join());
  }

  /** Where it tells its health and metrics, without a path. */
  public URI management() {
    return URI.create("http://127.0.0.1:" + managementPort.join());
  }

  /** Everything it has written so far, to either output. */
  public String log() {
    return log.toString();
  }

  /** The processor time it has used so far, which others on the machine hardly change. */
  public Duration processorTime() {
    return process.info().totalCpuDuration().orElseThrow();
  }

  /** Ends the process as a power cut or an impatient machine would: SIGKILL, at once. */
  public void kill() throws InterruptedException {
    process.destroyForcibly().waitFor();
  }

  /** The process's number. */
  long pid() {
    return process.pid();
  }

  /** Asks the process to stop, as a machine does that is switched off in order: SIGTERM. */
  public void terminate() {
    process.destroy();
  }

  /** Whether the process ends by itself within so many seconds. */
  public boolean endsWithin(int seconds) throws InterruptedException {
    return process.waitFor(seconds, TimeUnit.SECONDS);
  }

  /** What the process ended with; once {@link #endsWithin} has said that it ended. */
  public int exitValue() {
    return process.exitValue();
  }

  /** The most memory the process ever had in use, as the kernel counts it, in megabytes. */
  public long mostMemoryMb() throws IOException {
    return memoryMb("VmHWM:");
  }

  /** The memory the process has in use now, as the kernel counts it, in megabytes. */
  public long memoryMb() throws IOException {
    return memoryMb("VmRSS:");
  }

  private long memoryMb(String row) throws IOException {
    return Files.readAllLines(Path.of("/proc", Long.toString(process.pid()), "status")).stream()
        .filter(line -> line.startsWith(row))
        .mapToLong(line -> Long.parseLong(line.replaceAll("[^0-9]", "")) / 1024)
        .findFirst()
        .orElseThrow();
  }

  /** Asks the process to stop, and kills it when it has not within 15 seconds. */
  @Override
  public void close() {
    process.destroy();
    try {
      if (!process.waitFor(STOP.toSeconds(), TimeUnit.SECONDS)) {
        process.destroyForcibly();
      }
    } catch (InterruptedException e) {
      process.destroyForcibly();
      Thread.currentThread().interrupt();
    }
  }

  static Path jar() {
    try (Stream<Path> files = Files.list(TARGET)) {
      return files
          .filter(file -> file.getFileName().toString().endsWith("-runner.jar"))
          .findFirst()
          .orElseThrow(() -> new IllegalStateException("No jar; run: mvn -DskipTests package"));
    } catch (IOException e) {
      throw new IllegalStateException("No " + TARGET + "; run: mvn -DskipTests package", e);
    }
  }

  private void readLog() {
    try (BufferedReader lines = process.inputReader()) {
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        log.append(line).append('\n');
        Matcher listening = LISTENING.matcher(line);
        if (listening.find()) {
          managementPort.complete(Integer.valueOf(listening.group(2)));
          port.complete(Integer.valueOf(listening.group(1)));
        }
      }
      port.completeExceptionally(new IllegalStateException("It ended"));
    } catch (IOException e) {
      port.completeExceptionally(e);
    }
  }

  private void awaitListening() {
    try {
      port.get(START.toMillis(), TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      close();
      Thread.currentThread().interrupt();
      throw new IllegalStateException("Interrupted while waiting for the service", e);
    } catch (ExecutionException | TimeoutException e) {
      close();
      throw new IllegalStateException("The packaged service did not start:\n" + log, e);
    }
  }

  /** The status that its readiness is told with: 200, or 503 while something is down. */
  int readiness() throws IOException, InterruptedException {
    HttpRequest ready = HttpRequest.newBuilder(management().resolve("/q/health/ready")).build();
    return HttpClient.newHttpClient().send(ready, BodyHandlers.discarding()).statusCode();
  }

  private void awaitReady() {
    long deadline = System.nanoTime() + START.toNanos();
    try {
      while (readiness() != 200) {
        if (System.nanoTime() > deadline) {
          throw new TimeoutException();
        }
        Thread.sleep(100);
      }
    } catch (InterruptedException e) {
      close();
      Thread.currentThread().interrupt();
      throw new IllegalStateException("Interrupted while waiting for the service", e);
    } catch (TimeoutException | IOException e) {
      close();
      throw new IllegalStateException("The packaged service did not get ready:\n" + log, e);
    }
  }
}
