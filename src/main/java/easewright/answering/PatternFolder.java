package easewright.answering;

import easewright.pattern.PatternSheets;
import easewright.pattern.PatternSheets.Listed;
import easewright.pattern.SheetFaults;
import easewright.request.RequestJson;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.codec.digest.DigestUtils;
import org.jboss.logging.Logger;

/**
 * The operator's folder of pattern sheets. Each is checked as an uploaded one is; a faulty one is
 * left out and named in the log, or stays as it was if it was sound before, and the others serve.
 * Read again when a file changes.
 */
public final class PatternFolder {
  private static final Logger LOG = Logger.getLogger(PatternFolder.class);

  /** The desk offers each of them with all its sizes. */
  static final int MOST_SHEETS = 100;

  /** Of all files together, some 200 sheets of the usual size; parsed, they take more memory. */
  private static final int MOST_BYTES = 2 * 1024 * 1024;

  private static final int MOST_TOLD = 20;

  private static final String TOO_MANY =
      "The folder holds more than %d sheets, or more than %d MB of them. Take some out."
          .formatted(MOST_SHEETS, MOST_BYTES / 1024 / 1024);
  private static final String TOO_LARGE =
      "It has more than %d KB. Shorten it.".formatted(RequestJson.MOST_BYTES / 1024);
  private static final String NO_TEXT =
      "It is empty or can't be read. Write it, or let it be read.";
  private static final String SAME_ID =
      "Its id \"%s\" is that of %s too. Give each sheet an id of its own.";

  /** Not what editors keep beside it, nor hidden files. */
  private static final Pattern SHEET = Pattern.compile("[^.].*\\.(yaml|yml|json)");

  private final Path folder;
  private final boolean shippedToo;
  private final PatternSheets sheets;
  private final FolderWatch watch;
  private Map<String, Kept> kept = Map.of();
  private volatile List<String> faults = List.of();

  /**
   * What was made of a file.
   *
   * @param hash of its text
   * @param sound its last sheet without faults
   * @param fault everything wrong with its text, in words
   */
  private record Kept(String hash, Optional<Listed> sound, Optional<String> fault) {
    static final Kept NOTHING = new Kept("", Optional.empty(), Optional.empty());

    static Kept without(String fault) {
      return new Kept("", Optional.empty(), Optional.of(fault));
    }
  }

  /**
   * Reads a folder and offers its sheets.
   *
   * @param shippedToo whether the shipped sheets are offered after them
   * @throws IllegalStateException if there is no such folder
   */
  PatternFolder(Path folder, boolean shippedToo, PatternSheets sheets) {
    if (!Files.isDirectory(folder)) {
      throw new IllegalStateException(
          "easewright.patterns names no folder: \""
              + folder
              + "\". Name the folder that holds the pattern sheets, or leave it out.");
    }
    this.folder = folder;
    this.shippedToo = shippedToo;
    this.sheets = sheets;
    this.watch = new FolderWatch("pattern-folder", folder, 1, () -> {}, this::read);
    read();
  }

  void watch() {
    watch.start();
  }

  void stop() {
    watch.stop();
  }

  /** Each file that isn't offered as it is, and why; empty if all is well. */
  public List<String> faults() {
    return faults;
  }

  private void read() {
    Map<String, Kept> now = new TreeMap<>();
    Map<String, String> holders = new HashMap<>(); // of each id
    sheets.shipped().forEach(shipped -> holders.put(shipped.id(), "a shipped sheet"));
    List<Listed> offered = new ArrayList<>();
    List<String> found = new ArrayList<>();
    long bytes = 0;
    for (Path path : files()) {
      String file = path.getFileName().toString();
      byte[] text = text(path);
      bytes += text.length;
      Kept one =
          now.size() >= MOST_SHEETS || bytes > MOST_BYTES ? Kept.without(TOO_MANY) : of(file, text);
      now.put(file, one);
      one.fault().ifPresent(fault -> found.add(told(file, fault, one.sound().isPresent())));
      if (one.sound().isPresent()) {
        String id = one.sound().get().sheet().id();
        String holder = holders.putIfAbsent(id, file);
        if (holder == null) {
          offered.add(one.sound().get());
        } else {
          found.add(told(file, SAME_ID.formatted(id, holder), false));
        }
      }
    }
    sheets.offer(offered, shippedToo);
    found.stream().filter(fault -> !faults.contains(fault)).forEach(LOG::error);
    kept = now;
    faults = List.copyOf(found);
    LOG.infof("Pattern sheets offered from the folder: %d", offered.size());
  }

  private List<Path> files() {
    try (Stream<Path> all = Files.list(folder)) {
      return all.filter(file -> SHEET.matcher(file.getFileName().toString()).matches())
          .filter(Files::isRegularFile)
          .sorted()
          .toList();
    } catch (IOException gone) {
      throw new UncheckedIOException(gone);
    }
  }

  /**
   * One byte more than a sheet may have shows that it has too many; none, that it can't be read.
   */
  private static byte[] text(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      return in.readNBytes(RequestJson.MOST_BYTES + 1);
    } catch (IOException unreadable) {
      return new byte[0];
    }
  }

  private Kept of(String file, byte[] text) {
    Kept before = kept.getOrDefault(file, Kept.NOTHING);
    String hash = DigestUtils.sha256Hex(text);
    if (hash.equals(before.hash())) {
      return before;
    }
    if (text.length == 0 || text.length > RequestJson.MOST_BYTES) {
      return new Kept(hash, before.sound(), Optional.of(text.length == 0 ? NO_TEXT : TOO_LARGE));
    }
    try {
      Listed sound = sheets.readToOffer(new String(text, StandardCharsets.UTF_8));
      return new Kept(hash, Optional.of(sound), Optional.empty());
    } catch (SheetFaults found) {
      return new Kept(hash, before.sound(), Optional.of(inWords(found)));
    }
  }

  private static String inWords(SheetFaults found) {
    String first =
        found.faults().stream()
            .limit(MOST_TOLD)
            .map(
                fault ->
                    fault.line().map(line -> "Line " + line + ", ").orElse("")
                        + fault.pointer()
                        + ": "
                        + fault.problem()
                        + " "
                        + fault.remedy())
            .collect(Collectors.joining(" "));
    int more = found.faults().size() - MOST_TOLD;
    return more > 0 ? first + " And " + more + " more." : first;
  }

  private static String told(String file, String fault, boolean staysAsItWas) {
    return "The pattern sheet "
        + file
        + (staysAsItWas ? " stays as it was. " : " is left out. ")
        + fault;
  }
}
