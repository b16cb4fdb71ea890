package easewright.saying;

import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.AdjustmentNote;
import easewright.diagnosis.Answer.Amount;
import easewright.diagnosis.Answer.CauseNote;
import easewright.diagnosis.Answer.CureNote;
import easewright.diagnosis.Answer.EvidenceNote;
import easewright.diagnosis.Answer.PlaceNote;
import easewright.diagnosis.Answer.QuestionNote;
import easewright.diagnosis.Answer.RuleRef;
import easewright.diagnosis.Answer.SignNote;
import java.util.List;

/**
 * An answer with every part filled in, and a given text in every place where request text can
 * appear.
 */
final class SampleAnswer {
  private SampleAnswer() {}

  static Answer with(String text) {
    RuleRef rule = new RuleRef("band-too-long", "band too long: any", "Sum.", "s", "/rules/band");
    SignNote sign =
        new SignNote(
            "rides",
            "band rides up",
            true,
            text,
            "left",
            "clear",
            "12 mm",
            List.of("after-an-hour"),
            null);
    Amount amount = new Amount("3.2 cm", 32, 4, "4 mm", "band take-in", "32 = 800 − 768", false);
    EvidenceNote report =
        new EvidenceNote("rides", "band rides up", "sign", true, 9.5, "strong", 0.2, List.of(rule));
    Answer.SizeChance size = new Answer.SizeChance(text, 0.61);
    return new Answer(
        new Answer.RuleBookStamp("2026-11", "sha256:0"),
        new Answer.Understood(
            "metric",
            "sports-bra",
            text,
            text,
            new Answer.SizeSystemNote("eu", "usual", text),
            List.of(new Answer.SaidNote("finished underband", text)),
            List.of(new Answer.SaidNote("back", text)),
            List.of(new Answer.Measurement("bust", "94.0 cm", 940, 10.2, "10 mm", "tape-self")),
            List.of(sign),
            List.of(text),
            List.of(
                new Answer.TriedAsGiven(
                    null, text, text, "pinned", "12 mm", "better", List.of(text), List.of(text)))),
        List.of(
            new Answer.CautionNote(
                "c",
                "pain",
                "Pain matters.",
                "A clinician.",
                "care",
                false,
                null,
                null,
                null,
                null,
                List.of(),
                rule)),
        null,
        null,
        List.of(new Answer.AskedNote("x", "firm it", "yes", text)),
        new Answer.SizeAdvice(
            size,
            List.of(size),
            List.of(size),
            0.003,
            true,
            text,
            List.of(new Answer.SystemLabel("EN 13402-3", "80C", 0.5)),
            null,
            new Answer.TapeErrorNote(10.2, 10.2, text),
            List.of(new Answer.SizeNameNote("uk", "36C")),
            text,
            text,
            new Answer.SidesNote("left", 20, text)),
        List.of(
            new Answer.ClothResult(
                "main",
                "stretchy",
                "marginal",
                List.of(new Answer.ClothFigure("stretch", "around", 0.4, 0.02, "40 %")),
                List.of(new Answer.ClothNeed("stretch", "around", 0.5, 0.4, -0.1, "10 % short")))),
        List.of(
            new Answer.FindingNote(
                "f",
                "band slack",
                true,
                "The band is slack.",
                0.93,
                List.of(new Answer.FigureNote("band strain", 0.02, "", "2 %", "770/755 − 1")),
                List.of(new Answer.LimitNote("slack", "3 %", "below", "common practice")),
                rule)),
        List.of(
            new CauseNote(
                "band-too-long",
                "band too long",
                "The band is long.",
                0.734,
                -10,
                4,
                List.of(report),
                List.of(report),
                rule),
            new CauseNote(
                "elastic-too-weak",
                "elastic too weak",
                "The elastic is weak.",
                0.2,
                -12,
                1,
                List.of(),
                List.of(),
                null)),
        true,
        0.04,
        null,
        List.of(
            new Answer.FailedNote("x", "firm it", text, "same", "You tried to firm it: " + text)),
        List.of(
            new AdjustmentNote(
                "take-in-the-band",
                "take in the band",
                "first",
                "Take the band in by 3.2 cm.",
                0.6,
                "band",
                true,
                false,
                amount,
                null,
                List.of(new PlaceNote(text, "side seam", 4, amount, true, false)),
                "/drawings/side-seam.svg",
                List.of("Pin " + text, "Sew."),
                "Raise both arms.",
                List.of(sign),
                "an hour",
                "unpick",
                List.of("It is worn over a cast."),
                "The smallest change.",
                "It comes first.",
                List.of(new CureNote("band-too-long", 0.7, 0.9)),
                List.of(rule)),
            new AdjustmentNote(
                "shorten",
                "shorten",
                "later",
                "Shorten it.",
                0.1,
                "straps",
                true,
                false,
                null,
                "How slack it is.",
                List.of(),
                null,
                List.of(),
                "Look.",
                List.of(),
                "minutes",
                "simple",
                List.of(),
                "It may help.",
                null,
                List.of(),
                List.of())),
        new Answer.TrialNote(
            "take-in-the-band", text, "band-too-long", text, 0.73, amount, true, text, text),
        List.of(new Answer.HeldBackNote("x", "firm it", "Not while it hurts.", null)),
        List.of(
            new QuestionNote(
                "s",
                "Does it drop?",
                "Slacken.",
                "try",
                0.5,
                0.4,
                List.of(),
                List.of(),
                new Answer.ShiftNote("band-too-long", "band too long", 0.734, 0.9),
                new Answer.ShiftNote("elastic-too-weak", "elastic too weak", 0.2, 0.3),
                new Answer.PhotoNote("back", "arms raised", "Or a photo from the back."),
                null)),
        List.of(sign),
        List.of(
            new Answer.WhyNotNote(
                "y",
                "straps too short",
                0.05,
                "band too long",
                7.5,
                List.of(List.of(new Answer.ChangeNote("r", "it drops", "add", true))))),
        List.of(new Answer.MissingNote("/cloth/main", "the cloth", "It would tell more.")),
        List.of(new Answer.MeasureAgainNote("/body/bust", "Odd.", "Measure again.")),
        List.of(text),
        null,
        null);
  }
}
