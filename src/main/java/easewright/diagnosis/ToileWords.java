package easewright.diagnosis;

import easewright.diagnosis.Answer.SaidNote;
import easewright.fitting.Design;
import easewright.fitting.Fitting;
import easewright.fitting.GarmentEdge;
import easewright.fitting.GarmentMeasurements;
import easewright.fitting.MeasuredEdge;
import easewright.measure.Length;
import easewright.measure.Measures;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Wording;
import java.util.ArrayList;
import java.util.List;

/** Says back what was measured of the toile, and what is known of its design without a sheet. */
final class ToileWords {
  private final Fitting fitting;
  private final Wording wording;
  private final List<SaidNote> notes = new ArrayList<>();

  private ToileWords(Fitting fitting, Wording wording) {
    this.fitting = fitting;
    this.wording = wording;
  }

  /** What was measured of the toile; null when nothing was. */
  static List<SaidNote> garment(Fitting fitting, RuleBookSource source) {
    ToileWords words = new ToileWords(fitting, source.wording());
    GarmentMeasurements garment = fitting.garment();
    for (Measures.OfGarment one : source.measures().garment()) {
      Length length = garment.named(one.id());
      if (length != null) {
        words.add(one.name(), length.text(fitting.units()));
      }
    }
    garment.edges().forEach(words::edge);
    return words.said();
  }

  /** What is known of the design; null when nothing is. */
  static List<SaidNote> design(Fitting fitting, Wording wording) {
    ToileWords words = new ToileWords(fitting, wording);
    Design design = fitting.design();
    design.words().forEach((field, word) -> words.say("design-" + plain(field), word));
    if (design.stretchAsked() != null) {
      words.say(
          "design-stretch-asked",
          new UnitFormatter(fitting.units()).percent(design.stretchAsked()));
    }
    words.length("design-seam-allowance", design.seamAllowance());
    if (design.seamsAround() != null) {
      words.say("design-seams-around", design.seamsAround().toString());
    }
    design
        .drafted()
        .lengths()
        .forEach((field, length) -> words.length("drafted-" + plain(field), length));
    return words.said();
  }

  private void edge(MeasuredEdge measured) {
    String edge = wording.say("edge-" + measured.edge().wireName());
    // The underband was said already.
    if (measured.length() != null && measured.edge() != GarmentEdge.UNDERBAND) {
      add(wording.say("garment-edge", "edge", edge), measured.length().text(fitting.units()));
    }
    if (measured.drafted() != null) {
      add(
          wording.say("garment-edge-drafted", "edge", edge),
          measured.drafted().text(fitting.units()));
    }
    MeasuredEdge.EdgeElastic elastic = measured.elastic();
    if (elastic != null) {
      List<String> parts = new ArrayList<>();
      if (elastic.cut() != null) {
        parts.add(
            wording.say("garment-elastic-cut", "length", elastic.cut().text(fitting.units())));
      }
      if (elastic.width() != null) {
        parts.add(
            wording.say("garment-elastic-width", "length", elastic.width().text(fitting.units())));
      }
      if (elastic.kind() != null) {
        parts.add(elastic.kind());
      }
      if (elastic.putOn() != null) {
        parts.add(elastic.putOn());
      }
      add(wording.say("garment-elastic", "edge", edge), String.join(", ", parts));
    }
  }

  private void length(String key, Length length) {
    if (length != null) {
      say(key, length.text(fitting.units()));
    }
  }

  private void say(String key, String text) {
    add(wording.say(key), text);
  }

  private void add(String name, String text) {
    notes.add(new SaidNote(name, text));
  }

  private List<SaidNote> said() {
    return notes.isEmpty() ? null : List.copyOf(notes);
  }

  /** The field "supportLayer" as a key has it: "support-layer". */
  private static String plain(String field) {
    return field.replaceAll("([A-Z])", "-$1").toLowerCase(java.util.Locale.ROOT);
  }
}
