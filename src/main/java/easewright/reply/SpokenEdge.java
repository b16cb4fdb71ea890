package easewright.reply;

import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.SignNote;
import easewright.rulebook.Voice;
import easewright.rulebook.Wording;
import java.util.Arrays;
import java.util.List;

/** Names the edge that an elastic belongs to, where what was seen speaks of one edge only. */
record SpokenEdge(Answer answer, Voice voice) {

  /** The text with its blank {edge} filled in. */
  String in(String text) {
    return Wording.fill(text, "edge", voice.talk().edges().get(named()));
  }

  /** Whether the text has a blank for the edge. */
  static boolean isLeftOpenIn(String text) {
    return text.contains("{edge}");
  }

  private String named() {
    List<String> named =
        voice.talk().edges().keySet().stream()
            .filter(edge -> !edge.isEmpty() && isSeen(edge))
            .toList();
    return named.size() == 1 ? named.get(0) : "";
  }

  private boolean isSeen(String edge) {
    return answer.understood().signs().stream()
        .filter(SignNote::present)
        .anyMatch(sign -> Arrays.asList(sign.id().split("-")).contains(edge));
  }
}
