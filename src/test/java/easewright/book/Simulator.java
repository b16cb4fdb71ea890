package easewright.book;

import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.QuestionNote;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Random;
import java.util.Set;

/**
 * Draws wearers with known faults, lets them report, and compares the answers with the truth. Since
 * the truth is drawn from the rule book's own words, this shows that the service is consistent with
 * its book; it cannot show that the book is true.
 */
final class Simulator {
  /** How a wearer comes to report. */
  enum Manner {
    ASKED("Every fifth sign is looked for, and reported or denied"),
    VOLUNTEERED("Two in three of the signs that show are mentioned, nothing is denied"),
    QUESTIONED("As before, then up to five of the service's own questions are answered");

    private final String says;

    Manner(String says) {
      this.says = says;
    }
  }

  static final String CAVEAT =
      "The truth was drawn from the rule book itself: these figures show that the service is"
          + " consistent with its book, not that the book is true of real garments.";

  private static final double LOOKED_FOR = 1.0 / 5;
  private static final double MENTIONED = 2.0 / 3;
  private static final int QUESTIONS = 5;

  private final Random random;
  private final SimulatedNumbers numbers;

  Simulator(long seed) {
    this.random = new Random(seed);
    this.numbers = new SimulatedNumbers(random);
  }

  public static void main(String[] arguments) {
    int fittings = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 2000;
    print(new Simulator(1988).run(fittings));
  }

  static void print(Map<Manner, Tally> tallies) {
    System.out.println(CAVEAT);
    tallies.forEach((manner, tally) -> System.out.print(tally.text(manner.says + ".")));
  }

  Map<Manner, Tally> run(int fittings) {
    Map<Manner, Tally> tallies = new EnumMap<>(Manner.class);
    for (Manner manner : Manner.values()) {
      Tally tally = new Tally();
      for (int i = 0; i < fittings; i++) {
        SimulatedWearer wearer = new SimulatedWearer(random);
        tally.add(wearer.atWork(), consult(wearer, manner));
      }
      tallies.put(manner, tally);
    }
    return tallies;
  }

  private Answer consult(SimulatedWearer wearer, Manner manner) {
    ObjectNode fitting = numbers.fitting(wearer);
    Set<String> reported = new HashSet<>();
    for (String sign : SimulatedWearer.signs()) {
      boolean looks =
          manner == Manner.ASKED
              ? wearer.chance(LOOKED_FOR)
              : wearer.shows(sign) && wearer.chance(MENTIONED);
      if (looks) {
        if (manner == Manner.ASKED) {
          wearer.lookFor(sign, fitting);
        } else {
          wearer.mention(sign, fitting);
        }
        reported.add(sign);
      }
    }
    Answer answer = Consulting.answer(fitting);
    for (int asked = 0; manner == Manner.QUESTIONED && asked < QUESTIONS; asked++) {
      String next =
          answer.questions().stream()
              .map(QuestionNote::sign)
              .filter(reported::add)
              .findFirst()
              .orElse(null);
      if (next == null) {
        break;
      }
      wearer.lookFor(next, fitting);
      answer = Consulting.answer(fitting);
    }
    return answer;
  }
}
