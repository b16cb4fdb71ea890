package easewright.saying;

import easewright.check.ClothAnswer;
import easewright.check.SizeAnswer;
import easewright.check.SizeAnswer.SharpenNote;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.FindingNote;

/**
 * Checks cut down to what a reply needs: the measurements worth taking again, and the findings that
 * hold. Written without the view {@link Answer.Full}, the rest of them is left out too.
 */
final class LeanCheck {
  private LeanCheck() {}

  static SizeAnswer of(SizeAnswer answer) {
    return new SizeAnswer(
        answer.ruleBook(),
        answer.understood(),
        answer.cautions(),
        answer.notNow(),
        answer.size(),
        answer.take(),
        answer.mixed(),
        answer.sides(),
        answer.measureAgain(),
        answer.sharpen().stream().filter(SharpenNote::worthwhile).toList(),
        answer.labels(),
        answer.converted());
  }

  static ClothAnswer of(ClothAnswer answer) {
    return new ClothAnswer(
        answer.ruleBook(),
        answer.cautions(),
        answer.notNow(),
        answer.layers(),
        answer.together(),
        answer.width(),
        answer.elastic(),
        answer.findings().stream().filter(FindingNote::holds).toList(),
        answer.protocol());
  }
}
