package easewright.check;

import easewright.check.ClothAnswer.LayerNote;
import easewright.check.ClothAnswer.ProtocolNote;
import easewright.check.ClothAnswer.TogetherNote;
import easewright.cloth.ClothNeed;
import easewright.cloth.Layers;
import easewright.cloth.StretchTest;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Diagnosis;
import easewright.diagnosis.UnitFormatter;
import easewright.fitting.ClothReport;
import easewright.fitting.Fitting;
import easewright.pattern.Layer;
import easewright.rulebook.RuleBook;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;

/** Determines what cloths and an elastic are suitable for. Immutable and thread-safe. */
public final class ClothCheck {
  private final Diagnosis diagnosis;
  private final RuleBookSource source;
  private final Wording wording;

  public ClothCheck(RuleBook book, Diagnosis diagnosis) {
    this.diagnosis = diagnosis;
    this.source = book.source();
    this.wording = source.wording();
  }

  /** Judges the cloths and the elastic of a fitting; nothing needs to be sewn yet. */
  public ClothAnswer answer(Fitting fitting) {
    Answer judged = diagnosis.answer(fitting);
    if (judged.isDanger()) {
      return ClothAnswer.ofDanger(judged);
    }
    boolean nothingTighter = judged.nothingTighter();
    UnitFormatter shown = new UnitFormatter(fitting.units());
    LayerCheck layer = new LayerCheck(source, shown);
    List<LayerNote> layers =
        fitting.cloths().entrySet().stream()
            .filter(cloth -> cloth.getValue().test() != null)
            .map(cloth -> layer.of(cloth.getKey(), cloth.getValue(), need(fitting, cloth.getKey())))
            .toList();
    return new ClothAnswer(
        judged.ruleBook(),
        judged.cautions(),
        judged.notNow(),
        nothingTighter ? layers.stream().map(LayerNote::noNarrower).toList() : layers,
        together(fitting, shown),
        new Widths(source, shown).of(layers, nothingTighter).orElse(null),
        fitting.elastic() == null || fitting.elastic().test() == null
            ? null
            : new ElasticCheck(source, shown, nothingTighter)
                .of(fitting.elastic(), fitting.body().underbust()),
        judged.findings(),
        protocol());
  }

  /** How to test cloth and elastic at home. */
  public ProtocolNote protocol() {
    return new ProtocolNote(steps("test-cloth-"), steps("test-elastic-"));
  }

  private static ClothNeed need(Fitting fitting, String role) {
    return fitting.sheet() == null
        ? null
        : fitting.sheet().cloth().get(Layer.valueOf(role.toUpperCase(Locale.ROOT)));
  }

  private List<TogetherNote> together(Fitting fitting, UnitFormatter shown) {
    List<TogetherNote> notes = new ArrayList<>();
    together(fitting, "around", cloth -> cloth.test().around(), shown, notes);
    together(fitting, "along", cloth -> cloth.test().along(), shown, notes);
    return notes;
  }

  private void together(
      Fitting fitting,
      String direction,
      Function<ClothReport, StretchTest> test,
      UnitFormatter shown,
      List<TogetherNote> notes) {
    List<Layers.Layer> tested = new ArrayList<>();
    for (Map.Entry<String, ClothReport> cloth : fitting.cloths().entrySet()) {
      StretchTest pulled = cloth.getValue().test() == null ? null : test.apply(cloth.getValue());
      if (pulled != null) {
        tested.add(new Layers.Layer(cloth.getKey(), pulled.stretch(), null));
      }
    }
    if (tested.size() < 2) {
      return;
    }
    Layers.Layer limiting = new Layers(tested).limiting();
    notes.add(
        new TogetherNote(
            direction,
            limiting.name(),
            limiting.stretch().value(),
            limiting.stretch().sd(),
            wording.say(
                "layers-together",
                "layer",
                limiting.name(),
                "direction",
                direction,
                "stretch",
                shown.percent(limiting.stretch().value()))));
  }

  /** Steps are numbered from 1 in the wording. */
  private List<String> steps(String key) {
    return Stream.iterate(1, n -> n + 1)
        .takeWhile(n -> wording.sentences().containsKey(key + n))
        .map(n -> wording.say(key + n))
        .toList();
  }
}
