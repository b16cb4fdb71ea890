package easewright.intake;

import easewright.intake.Reading.LengthRead;
import easewright.intake.Reading.SignRead;
import easewright.intake.Reading.TextRead;
import easewright.measure.BadQuantity;
import easewright.measure.Quantity;
import easewright.modelreader.ModelReading;
import easewright.modelreader.ModelReading.CircumstanceSaid;
import easewright.modelreader.ModelReading.LengthSaid;
import easewright.modelreader.ModelReading.SignSaid;
import easewright.number.Amount;
import easewright.number.TextSpan;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.RuleBookSource;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Adds what a language model read to what was read without it. It only adds: a danger that it
 * reports is raised, one that it denies changes nothing, and whatever else was read already stays
 * as it was read. How far it is to be trusted is a number of the rule book.
 */
final class ModelSaid {
  private final Map<String, SignEntry> catalog;
  private final Lengths lengths;
  private final double trust;

  ModelSaid(RuleBookSource book, Lengths lengths) {
    this.catalog = book.catalog().signs();
    this.lengths = lengths;
    this.trust = book.parameter("language-model-trusted");
  }

  /**
   * The signs with those that only the model read.
   *
   * @param tried words that tell of a trial or an earlier toile: only dangers are read there
   */
  Joined with(Joined joined, ModelReading model, Post whole, BitSet tried) {
    for (SignSaid one : model.signs()) {
      SignEntry sign = catalog.get(one.sign());
      boolean danger = sign != null && sign.redFlag();
      if (sign == null || danger && !one.present() || isContradicted(one, model) && !danger) {
        continue;
      }
      boolean now = !tried.get(Whereabouts.wordAt(whole, one.from()));
      Optional<SignRead> known =
          joined.signs().stream().filter(read -> read.id().equals(sign.id())).findFirst();
      if (danger ? !known.map(SignRead::present).orElse(false) : known.isEmpty() && now) {
        known.ifPresent(joined.signs()::remove);
        joined.struck().removeIf(struck -> struck.perhaps().contains(sign.id()));
        SignRead read =
            new SignRead(
                sign.id(),
                one.present(),
                null,
                null,
                null,
                null,
                sign.name(),
                new TextSpan(one.from(), one.to()),
                trust);
        joined.added().add(read);
        joined.signs().add(read);
      }
    }
    return joined;
  }

  /** A model that says both says nothing. */
  private static boolean isContradicted(SignSaid one, ModelReading model) {
    return model.signs().stream()
        .anyMatch(other -> other.sign().equals(one.sign()) && other.present() != one.present());
  }

  /**
   * The lengths with those that the model named. The number is the post's own, as the words read
   * it; the model only says what it measures.
   *
   * @param free amounts that nothing else has taken
   */
  List<LengthRead> with(List<LengthRead> read, ModelReading model, List<Amount> free) {
    List<LengthRead> all = new ArrayList<>(read);
    for (LengthSaid one : model.lengths()) {
      TextSpan passage = new TextSpan(one.from(), one.to());
      boolean known =
          all.stream().anyMatch(other -> isOfBody(other) && other.name().equals(one.name()));
      Optional<Amount> amount =
          free.stream()
              .filter(it -> passage.covers(it.span()) && isSame(it, one.value()))
              .filter(it -> all.stream().noneMatch(other -> other.span().touches(it.span())))
              .findFirst();
      if (!known && amount.isPresent() && lengths.isPossible(amount.get(), one.name(), all)) {
        all.add(
            new LengthRead(
                "body", one.name(), amount.get().text(null), Map.of(), false, passage, trust));
      }
    }
    return all;
  }

  private static boolean isOfBody(LengthRead read) {
    return read.of().equals("body");
  }

  /** Whether an amount with a unit of its own, and no range, is the length that the model wrote. */
  private static boolean isSame(Amount amount, String value) {
    if (!amount.isLength() || amount.most() != null) {
      return false;
    }
    try {
      return Math.abs(Quantity.parse(value).length().mm() - amount.mm(null)) < 1;
    } catch (BadQuantity | IllegalArgumentException other) {
      return false;
    }
  }

  /** The circumstances with those that the model named; none is taken away. */
  List<TextRead> withCircumstances(List<TextRead> read, ModelReading model) {
    List<TextRead> all = new ArrayList<>(read);
    for (CircumstanceSaid one : model.circumstances()) {
      if (all.stream().noneMatch(other -> other.value().equals(one.circumstance()))) {
        TextSpan passage = new TextSpan(one.from(), one.to());
        all.addAll(
            CircumstanceFinder.onSafety(List.of(new TextRead(one.circumstance(), passage, trust))));
      }
    }
    return all;
  }
}
