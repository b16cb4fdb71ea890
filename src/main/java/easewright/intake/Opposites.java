package easewright.intake;

import easewright.intake.Reading.SignRead;
import easewright.number.WordLists;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Pairs of signs of which a sentence can report only one: too high or too low. Where a reader finds
 * both, it knows what is spoken of and not which way; the surer one stands.
 */
final class Opposites {
  private final Map<String, String> pairs;

  Opposites(WordLists lists) {
    this.pairs = lists.pairs("opposite signs");
  }

  /** The same reading without the less sure of two opposites that one sentence tells. */
  Joined settled(Joined joined) {
    return new Joined(
        settled(joined.signs(), joined.signs()),
        settled(joined.added(), joined.signs()),
        joined.struck(),
        joined.readYourself());
  }

  private List<SignRead> settled(List<SignRead> some, List<SignRead> all) {
    return some.stream()
        .filter(one -> all.stream().noneMatch(other -> isSurerOpposite(other, one)))
        .collect(Collectors.toCollection(ArrayList::new));
  }

  private boolean isSurerOpposite(SignRead other, SignRead one) {
    return one.present()
        && other.present()
        && (other.id().equals(pairs.get(one.id())) || one.id().equals(pairs.get(other.id())))
        && other.confidence() > one.confidence()
        && other.span().touches(one.span());
  }
}
