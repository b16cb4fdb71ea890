package easewright.desk;

import easewright.clinic.Case;
import easewright.clinic.Queue;
import easewright.clinic.Queue.Entry;
import easewright.clinic.Queue.Reason;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * The part of a clinic's queue that one page shows: cases in one state, with certain words, a few
 * at a time.
 *
 * @param state the state chosen
 * @param words the words searched for, or ""
 * @param counts how many cases each state has, without a search
 * @param shown the cases of this page, in the order of the queue
 * @param from how many come before them
 * @param found how many the state and the words leave
 */
public record QueueView(
    State state, String words, List<Count> counts, List<Entry> shown, int from, int found) {
  /** Cases on a page. */
  static final int MOST = 12;

  private static final int MOST_WORDS = 80;

  /** What a list of cases may be limited to. */
  public enum State {
    WAITING(entry -> !entry.current().closed() && entry.reason() != Reason.ANSWERED),
    RED_FLAG(entry -> !entry.current().closed() && entry.reason() == Reason.RED_FLAG),
    MINE(entry -> false),
    ANSWERED(entry -> !entry.current().closed() && entry.reason() == Reason.ANSWERED),
    CLOSED(entry -> entry.current().closed()),
    ALL(entry -> true);

    private final Predicate<Entry> holds;

    State(Predicate<Entry> holds) {
      this.holds = holds;
    }

    private boolean has(Entry entry, ClinicViewer who) {
      return this == MINE
          ? !entry.current().closed() && who.holds(entry.current())
          : holds.test(entry);
    }

    /** Its name in an address. */
    public String key() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  /** A state and how many cases it has. */
  public record Count(State state, int cases) {}

  /**
   * Chooses what to show.
   *
   * @param state a state's key; whoever waits if it is none
   * @param words all of them must be in the nickname or in the first words of the latest post
   * @param from how many cases earlier pages have shown
   */
  static QueueView of(List<Case> cases, ClinicViewer who, String state, String words, int from) {
    List<Entry> all =
        Stream.concat(
                Queue.of(cases).entries().stream(),
                cases.stream()
                    .filter(Case::closed)
                    .map(one -> new Entry(one, Reason.ANSWERED, null)))
            .toList();
    State chosen =
        Stream.of(State.values())
            .filter(one -> one.key().equals(state))
            .findFirst()
            .orElse(State.WAITING);
    String sought = words == null ? "" : words.strip();
    String searched = sought.substring(0, Math.min(MOST_WORDS, sought.length()));
    List<Entry> found =
        all.stream()
            .filter(entry -> chosen.has(entry, who) && speaksOf(entry.current(), searched))
            .toList();
    int first = Math.max(0, Math.min(from, (found.size() - 1) / MOST * MOST));
    return new QueueView(
        chosen,
        searched,
        Stream.of(State.values())
            .map(
                one ->
                    new Count(one, (int) all.stream().filter(entry -> one.has(entry, who)).count()))
            .toList(),
        found.stream().skip(first).limit(MOST).toList(),
        first,
        found.size());
  }

  private static boolean speaksOf(Case one, String words) {
    String said =
        (one.nickname() + " " + (one.asked() == null ? "" : one.asked())).toLowerCase(Locale.ROOT);
    return Stream.of(words.toLowerCase(Locale.ROOT).split("\\s+")).allMatch(said::contains);
  }

  /** The words as they stand in an address. */
  public String wordsInAddress() {
    return URLEncoder.encode(words, StandardCharsets.UTF_8);
  }

  /** Where the next page begins; 0 if this is the last. */
  public int next() {
    return from + shown.size() < found ? from + MOST : 0;
  }

  /** Where the page before begins. */
  public int before() {
    return Math.max(0, from - MOST);
  }

  /** The number of the last case shown. */
  public int to() {
    return from + shown.size();
  }
}
