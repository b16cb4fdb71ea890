package easewright.fuzz;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.fuzz.RawRequest.Answer;
import java.util.regex.Pattern;

/** What holds of every answer to whatever was sent (OWASP Error Handling Cheat Sheet). */
final class GoodOrder {
  private static final Pattern INSIDE =
      Pattern.compile(
          "(?i)exception|\\b(java|jakarta|io|org|com)\\.[a-z]+\\.[a-z]|\\.java:|\\bat easewright"
              + "|(?-i:easewright\\.[a-z]+\\.[A-Z])|sqlstate|jdbc|\\binsert into\\b|\\bselect \\w+ from\\b");

  private GoodOrder() {}

  /** It came, the fault is not ours, and no header is the asker's. */
  static void look(RawRequest request, Answer answer) {
    String told = request + "\n" + answer.status() + " " + answer.headers() + "\n" + answer.body();
    assertTrue(answer.status() > 0, () -> "Hung up: " + request);
    assertTrue(
        answer.status() < 500 || answer.status() == 503 && !answer.header("retry-after").isEmpty(),
        told);
    assertFalse(answer.headers().containsKey(Hostile.MARK), told);
  }

  /** A refusal names nothing of what is inside. */
  static void lookAtRefusal(String refusal, String told) {
    assertFalse(INSIDE.matcher(refusal).find(), told);
  }
}
