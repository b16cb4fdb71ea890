package easewright.book;

import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.Answer;
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

  /** Each wearer reports in every manner, so that the manners can be compared. */
  Map<Manner, Tally> run(int wearers) {
    Map<Manner, Tally> tallies = new EnumMap<>(Manner.class);
    for (Manner manner : Manner.values()) {
      tallies.put(manner, new Tally());
    }
    for (int i = 0; i < wearers; i++) {
      SimulatedWearer wearer = new SimulatedWearer(random);
      ObjectNode asked = numbers.fitting(wearer);
      ObjectNode told = asked.deepCopy();
      for (String sign : SimulatedWearer.signs()) {
        if (wearer.chance(LOOKED_FOR)) {
          wearer.lookFor(sign, asked);
        }
      }
      Set<String> mentioned = mention(wearer, told);
      Answer answer = Consulting.answer(told);
      tallies.get(Manner.ASKED).add(wearer.atWork(), Consulting.answer(asked));
      tallies.get(Manner.VOLUNTEERED).add(wearer.atWork(), answer);
      tallies
          .get(Manner.QUESTIONED)
          .add(wearer.atWork(), afterQuestions(wearer, told, mentioned, answer));
    }
    return tallies;
  }

  private static Set<String> mention(SimulatedWearer wearer, ObjectNode fitting) {
    Set<String> mentioned = new HashSet<>();
    for (String sign : SimulatedWearer.signs()) {
      if (wearer.shows(sign) && wearer.chance(MENTIONED)) {
        wearer.mention(sign, fitting);
        mentioned.add(sign);
      }
    }
    return mentioned;
  }

  private static Answer afterQuestions(
      SimulatedWearer wearer, ObjectNode fitting, Set<String> reported, Answer before) {
    Answer answer = before;
    for (int asked = 0; asked < QUESTIONS && !answer.questions().isEmpty(); asked++) {
      String next = answer.questions().get(0).sign();
      if (!reported.add(next)) {
        throw new IllegalStateException("The service asks again about " + next + ".");
      }
      wearer.lookFor(next, fitting);
      answer = Consulting.answer(fitting);
    }
    return answer;
  }
}
