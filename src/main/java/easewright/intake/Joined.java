package easewright.intake;

import easewright.intake.Reading.NotUnderstood;
import easewright.intake.Reading.ReadYourself;
import easewright.intake.Reading.SignRead;
import easewright.reading.ReaderSettings.Joining;
import easewright.reading.ReaderSettings.Weights;
import easewright.reading.Said;
import easewright.reading.SentenceSaid;
import easewright.reading.TrainedReading;
import easewright.rulebook.Catalog.SignEntry;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The signs that the words read, joined with what a trained model read of the same text. Each
 * confidence is a logistic regression over both. The span is the words' own where they read the
 * sign, else the model's sentence. A danger is raised by either and lowered by neither.
 *
 * @param signs what both together read
 * @param added stretches of signs that only the model read
 * @param struck what the words read and the model makes improbable: to ask about
 * @param readYourself sentences that may tell of a danger
 */
record Joined(
    List<SignRead> signs,
    List<TextSpan> added,
    List<NotUnderstood> struck,
    List<ReadYourself> readYourself) {

  /** What the words read, unchanged. */
  static Joined ofWordsAlone(List<SignRead> read) {
    return new Joined(
        new ArrayList<>(read), new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
  }

  /**
   * Joins two readings of one text.
   *
   * @param read by the words; a sign at most once
   * @param model by the model; signs that it doesn't know are left as the words read them
   * @param catalog signs that it doesn't hold are left out
   */
  static Joined of(List<SignRead> read, TrainedReading model, Map<String, SignEntry> catalog) {
    Joined joined = ofWordsAlone(read);
    for (String sign : model.settings().signs()) {
      SignEntry entry = catalog.get(sign);
      if (entry != null && !model.sentences().isEmpty()) {
        joined.join(entry, model);
      }
    }
    return joined;
  }

  /**
   * Adds sentences for a person to read, unless they hold a danger or are to be read anyway.
   *
   * @param dangers where dangers were read
   * @param all what is to be read already
   */
  void addReadYourself(List<TextSpan> dangers, List<ReadYourself> all) {
    for (ReadYourself one : readYourself) {
      if (dangers.stream().noneMatch(one.span()::touches)
          && all.stream().noneMatch(other -> other.span().touches(one.span()))) {
        all.add(one);
      }
    }
  }

  /**
   * What was not understood, in order: what neither read, what was struck, and ranges that the
   * writer is asked about.
   */
  List<NotUnderstood> notUnderstood(List<NotUnderstood> unread, List<TextSpan> asked) {
    return Stream.of(
            unread.stream().filter(one -> added.stream().noneMatch(one.span()::touches)),
            struck.stream(),
            asked.stream().map(one -> new NotUnderstood(one, List.of())))
        .flatMap(all -> all)
        .sorted(Comparator.comparingInt(one -> one.span().from()))
        .toList();
  }

  private void join(SignEntry sign, TrainedReading model) {
    Optional<SignRead> words = signs.stream().filter(one -> one.id().equals(sign.id())).findFirst();
    Joining joining = model.settings().joining();
    if (sign.redFlag()) {
      if (!words.map(SignRead::present).orElse(false)) {
        joinDanger(sign, model, joining);
      }
      return;
    }
    SentenceSaid reported = model.most(sign.id(), Said::reported).orElseThrow();
    SentenceSaid denied = model.most(sign.id(), Said::denied).orElseThrow();
    boolean so = words.isPresent() && words.get().present();
    boolean notSo = words.isPresent() && !so;
    double sure = joining.reported().confidence(reported.said(sign.id()).reported(), so, notSo);
    double sureNot = joining.denied().confidence(denied.said(sign.id()).denied(), notSo, so);
    boolean present = isRead(sure, joining.reported(), so);
    boolean absent = isRead(sureNot, joining.denied(), notSo);
    words.ifPresent(signs::remove);
    if (present && (!absent || sure >= sureNot)) {
      add(so ? words.get() : null, sign, true, reported, sure);
    } else if (absent) {
      add(notSo ? words.get() : null, sign, false, denied, sureNot);
    } else if (so) {
      struck.add(new NotUnderstood(words.get().span(), List.of(sign.id())));
    }
  }

  private static boolean isRead(double confidence, Weights weights, boolean byWords) {
    return confidence >= (byWords ? weights.kept() : weights.added());
  }

  private void add(
      SignRead words, SignEntry sign, boolean present, SentenceSaid sentence, double confidence) {
    if (words != null) {
      signs.add(surer(words, confidence));
      return;
    }
    TextSpan span = new TextSpan(sentence.from(), sentence.to());
    added.add(span);
    signs.add(
        new SignRead(sign.id(), present, null, null, null, null, sign.name(), span, confidence));
  }

  private static SignRead surer(SignRead one, double confidence) {
    return new SignRead(
        one.id(),
        one.present(),
        one.place(),
        one.side(),
        one.degree(),
        one.amount(),
        one.because(),
        one.span(),
        confidence);
  }

  private void joinDanger(SignEntry sign, TrainedReading model, Joining joining) {
    SentenceSaid reported = model.most(sign.id(), Said::reported).orElseThrow();
    double raised = reported.said(sign.id()).reported();
    SentenceSaid spoken = model.most(sign.id(), Joined::spokenOf).orElseThrow();
    if (raised >= joining.dangerRaised()) {
      signs.removeIf(one -> one.id().equals(sign.id()));
      add(null, sign, true, reported, raised);
    } else if (spokenOf(spoken.said(sign.id())) >= joining.dangerShown()) {
      readYourself.add(new ReadYourself(new TextSpan(spoken.from(), spoken.to()), sign.name()));
    }
  }

  private static double spokenOf(Said said) {
    return said.reported() + said.doubtful();
  }
}
