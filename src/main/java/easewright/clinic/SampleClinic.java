package easewright.clinic;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * A sample clinic of invented wearers, defined in {@code sample.yaml}. It is like any other clinic,
 * except for a button that removes it. Its wearers' questions are answered by the active rules each
 * time it is opened.
 */
public final class SampleClinic {
  private static final String TOLD = "/easewright/clinic/sample.yaml";
  private static final int RETENTION_DAYS = 180;
  private static final Duration TILL_REPLIED = Duration.ofHours(9);
  private static final Duration TILL_TRIED = Duration.ofDays(2);
  private static final YAMLMapper YAML =
      YAMLMapper.builder().enable(MapperFeature.ACCEPT_CASE_INSENSITIVE_ENUMS).build();

  private record Sample(
      String name,
      String organiser,
      String helper,
      Map<String, JsonNode> cloths,
      Map<String, String> replies,
      List<Asking> cases) {}

  /** A wearer, her top, and her reports, with days counted from the first. */
  private record Asking(
      String wearer,
      int daysAgo,
      String cloth,
      ObjectNode told,
      boolean closed,
      List<Turn> rounds) {}

  private record Turn(int after, String says, String reply, Outcome outcome) {}

  private final Sample sample;
  private final ClinicStore store;
  private final Function<ObjectNode, Fitted> answering;
  private final Instant now;

  private SampleClinic(ClinicStore store, Function<ObjectNode, Fitted> answering, Instant now) {
    this.sample = load();
    this.store = store;
    this.answering = answering;
    this.now = now;
  }

  private static Sample load() {
    try (InputStream yaml = SampleClinic.class.getResourceAsStream(TOLD)) {
      return YAML.readValue(yaml, Sample.class);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Opens the sample clinic, with cases spread over the previous weeks.
   *
   * @param answering answers a fitting request
   * @param now the current time
   * @return the clinic with its organiser's key
   */
  public static Clinics.Opened open(
      ClinicStore store, Function<ObjectNode, Fitted> answering, Instant now) {
    return new SampleClinic(store, answering, now).open();
  }

  private Clinics.Opened open() {
    Clinics.Opened opened =
        store.clinics().open(sample.name(), sample.organiser(), RETENTION_DAYS, true);
    Caller organiser = store.keys().holder(opened.key().text()).orElseThrow();
    Key helpersKey = store.keys().issue(organiser, Role.HELPER, sample.helper());
    Caller helper = store.keys().holder(helpersKey.text()).orElseThrow();
    for (int i = 0; i < sample.cases().size(); i++) {
      ask(sample.cases().get(i), i % 2 == 0 ? organiser : helper);
    }
    return opened;
  }

  private void ask(Asking asking, Caller caller) {
    Instant began = now.minus(Duration.ofDays(asking.daysAgo()));
    String id = null;
    for (int i = 0; i < asking.rounds().size(); i++) {
      Turn turn = asking.rounds().get(i);
      Instant asked = began.plus(Duration.ofDays(turn.after()));
      Fitted fitted = answering.apply(request(asking, turn));
      if (id == null) {
        id = at(asked).rounds().open(caller, asking.wearer(), fitted).id();
      } else {
        at(asked).rounds().add(caller, id, fitted);
      }
      answer(caller, id, i + 1, turn, asked);
    }
    if (asking.closed()) {
      Case last = store.cases().story(caller, id).current();
      at(now).cases().close(caller, id, last.version());
    }
  }

  private void answer(Caller caller, String id, int number, Turn turn, Instant asked) {
    if (turn.reply() != null) {
      int seen = store.cases().story(caller, id).current().version();
      String text = sample.replies().get(turn.reply());
      at(asked.plus(TILL_REPLIED)).rounds().reply(caller, id, number, seen, text);
    }
    if (turn.outcome() != null) {
      Instant tried = asked.plus(TILL_TRIED);
      at(tried).rounds().outcome(caller, id, number, turn.outcome(), null);
    }
  }

  private ObjectNode request(Asking asking, Turn turn) {
    ObjectNode request = asking.told().deepCopy();
    request.set("cloth", sample.cloths().get(asking.cloth()));
    return request.put("text", turn.says());
  }

  private ClinicStore at(Instant time) {
    return store.by(Clock.fixed(time.isAfter(now) ? now : time, ZoneOffset.UTC));
  }
}
