import java.io.BufferedReader;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Starts the packaged service once, asks it what askers ask first and stops it in order: the Java
 * machine then writes the classes it needed for that into an archive, which more than halves every
 * later start. A step of packaging, run from its source, since the service itself asks nobody
 * anything.
 *
 * <p>Arguments: the jar, the archive to write, and a file of JSON for each fitting to ask.
 */
final class RecordStart {
  private static final Pattern LISTENING = Pattern.compile("Listening on: (http://[^ ]*:\\d+)");
  private static final long MOST_SECONDS_TO_STOP = 120;

  private RecordStart() {}

  public static void main(String[] args) throws IOException, InterruptedException {
    Process service =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:ArchiveClassesAtExit=" + args[1],
                "-Xlog:cds=off",
                "-Xlog:cds+dynamic=off",
                "-Dquarkus.http.host=127.0.0.1",
                "-Dquarkus.http.port=0",
                "-Dquarkus.management.port=0",
                "-jar",
                args[0])
            .redirectErrorStream(true)
            .start();
    try {
      StringBuffer log = new StringBuffer();
      URI address = address(service, log);
      for (String fitting : List.of(args).subList(2, args.length)) {
        ask(post(address.resolve("/v1/fittings"), Path.of(fitting)));
      }
      ask(HttpRequest.newBuilder(address.resolve("/desk")).build());
      // Through the handle, which leaves the output open: what it says last is read too.
      service.toHandle().destroy();
      if (!service.waitFor(MOST_SECONDS_TO_STOP, TimeUnit.SECONDS)) {
        throw new IllegalStateException("The service did not stop:\n" + log);
      }
    } finally {
      service.destroyForcibly();
    }
  }

  /** Waits until the service says where it listens, and goes on reading what it says. */
  private static URI address(Process service, StringBuffer log) throws IOException {
    BufferedReader lines = service.inputReader();
    for (String line = lines.readLine(); line != null; line = lines.readLine()) {
      log.append(line).append('\n');
      Matcher listening = LISTENING.matcher(line);
      if (listening.find()) {
        Thread rest = new Thread(() -> lines.lines().forEach(l -> log.append(l).append('\n')));
        rest.setDaemon(true);
        rest.start();
        return URI.create(listening.group(1));
      }
    }
    throw new IllegalStateException("The service did not start:\n" + log);
  }

  private static HttpRequest post(URI address, Path json) throws IOException {
    return HttpRequest.newBuilder(address)
        .header("Content-Type", "application/json")
        .POST(BodyPublishers.ofFile(json))
        .build();
  }

  private static void ask(HttpRequest request) throws IOException, InterruptedException {
    HttpResponse<String> answer = HttpClient.newHttpClient().send(request, BodyHandlers.ofString());
    if (answer.statusCode() != 200) {
      throw new IllegalStateException(request.uri() + " was answered " + answer.body());
    }
  }
}
