package easewright.plan;

import easewright.pattern.Layer;
import easewright.pattern.SheetChoice;
import easewright.pattern.Trim;
import easewright.plan.CutPlan.Amount;
import easewright.plan.CutPlan.ClothMore;
import easewright.plan.CutPlan.Otherwise;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Wording;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/** Computes what every option not chosen would add or save. */
record Comparing(RuleBookSource book, ChangeBook ways, Laying laying, CutRequest request) {

  List<Otherwise> all(PlannedCut chosen) {
    Map<String, String> decided = request.sheet().decided(request.choices());
    List<Otherwise> all = new ArrayList<>();
    for (SheetChoice choice : request.sheet().choices()) {
      for (SheetChoice.Option option : choice.options()) {
        if (!option.id().equals(decided.get(choice.id()))) {
          all.add(otherwise(choice, option, chosen, decided));
        }
      }
    }
    return all;
  }

  private Otherwise otherwise(
      SheetChoice choice,
      SheetChoice.Option option,
      PlannedCut chosen,
      Map<String, String> decided) {
    Map<String, String> others = new LinkedHashMap<>(decided);
    others.put(choice.id(), option.id());
    CutRequest asked = request.choosing(others);
    PlannedCut drawn;
    try {
      drawn = PlannedCut.of(asked, book, ways, laying);
    } catch (IllegalArgumentException | CannotBeCut impossible) {
      return note(choice, option, false, List.of(), List.of(), List.of(), List.of(), List.of());
    }
    Map<String, Integer> pieces = counted(drawn, chosen);
    Map<String, Double> supplies = supplies(asked, drawn, 1);
    supplies(request, chosen, -1).forEach((name, mm) -> supplies.merge(name, mm, Double::sum));
    return note(
        choice,
        option,
        true,
        pieces.keySet().stream().filter(name -> pieces.get(name) > 0).toList(),
        pieces.keySet().stream().filter(name -> pieces.get(name) < 0).toList(),
        suppliesText(supplies, 1),
        suppliesText(supplies, -1),
        cloth(drawn.buyMm(asked, buying()), chosen.buyMm(request, buying())));
  }

  private Buying buying() {
    return new Buying(book, request.units());
  }

  private static Map<String, Integer> counted(PlannedCut more, PlannedCut less) {
    Map<String, Integer> counted = new LinkedHashMap<>();
    more.pieces()
        .forEach(one -> counted.merge(one.piece().name(), one.piece().count(), Integer::sum));
    less.pieces()
        .forEach(one -> counted.merge(one.piece().name(), -one.piece().count(), Integer::sum));
    return counted;
  }

  /** Length of each supply in mm by name; a supply without a length counts as 1e9 mm each. */
  private static Map<String, Double> supplies(CutRequest asked, PlannedCut drawn, int sign) {
    Map<String, Double> supplies = new LinkedHashMap<>();
    for (Trim trim : asked.sheet().trims(asked.choices())) {
      double mm = trim.lengthMm(drawn.sizes().finishedMm()).orElse(0.0) * trim.times();
      supplies.merge(trim.name(), sign * (mm == 0 ? 1e9 * trim.times() : mm), Double::sum);
    }
    return supplies;
  }

  private List<String> suppliesText(Map<String, Double> supplies, int sign) {
    List<String> texts = new ArrayList<>();
    supplies.forEach(
        (name, mm) -> {
          if (mm * sign >= 0.5) {
            double size = Math.abs(mm);
            texts.add(
                size >= 1e9 / 2
                    ? wording().say("plan-times", "count", Math.round(size / 1e9), "name", name)
                    : wording()
                        .say(
                            "plan-of",
                            "length",
                            Texts.amount(size, request.units()).text(),
                            "name",
                            name));
          }
        });
    return texts;
  }

  private List<ClothMore> cloth(Map<Layer, Double> then, Map<Layer, Double> now) {
    List<ClothMore> more = new ArrayList<>();
    for (Layer layer : new TreeSet<>(now.keySet())) {
      double mm = then.getOrDefault(layer, 0.0) - now.get(layer);
      if (Math.abs(mm) > 1) {
        more.add(
            new ClothMore(
                CutList.wire(layer),
                wording().say("plan-layer-" + CutList.wire(layer)),
                new Amount(
                    wording()
                        .say(
                            mm > 0 ? "plan-more" : "plan-less",
                            "length",
                            Texts.sold(Math.abs(mm), request.units()).text()),
                    mm)));
      }
    }
    return more;
  }

  private Wording wording() {
    return book.wording();
  }

  private Otherwise note(
      SheetChoice choice,
      SheetChoice.Option option,
      boolean possible,
      List<String> piecesMore,
      List<String> piecesLess,
      List<String> suppliesMore,
      List<String> suppliesLess,
      List<ClothMore> cloth) {
    boolean alters =
        !(piecesMore.isEmpty()
            && piecesLess.isEmpty()
            && suppliesMore.isEmpty()
            && suppliesLess.isEmpty()
            && cloth.isEmpty());
    return new Otherwise(
        choice.id(),
        choice.name(),
        option.id(),
        option.name(),
        possible,
        piecesMore,
        piecesLess,
        suppliesMore,
        suppliesLess,
        cloth,
        wording()
            .say(
                possible
                    ? alters ? "plan-option-alters" : "plan-option-same"
                    : "plan-option-not-now",
                "option",
                option.name()));
  }
}
