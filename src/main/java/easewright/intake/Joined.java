package easewright.intake;

import easewright.intake.Reading.NotUnderstood;
import easewright.intake.Reading.ReadYourself;
import easewright.intake.Reading.SignRead;
import easewright.number.TextSpan;
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
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * The signs that the words read, joined with what a trained model read of the same text. Each
 * confidence is a logistic regression over both. The span is the words' own where they read the
 * sign, else the model's sentence.
 *
 * <p>Either raises a danger. One that only the words read, and that the model finds most improbable
 * in every sentence of a text without any other danger, stops nothing: it is for a person to read,
 * and nothing tighter is advised before that. A danger is never denied by the model.
 *
 * @param signs what both together read
 * @param added those that only the model read
 * @param struck what the words read and the model makes improbable: to ask about
 * @param readYourself stretches that may tell of a danger
 */
record Joined(
    List<SignRead> signs,
    List<SignRead> added,
    List<NotUnderstood> struck,
    List<ReadYourself> readYourself) {

  /** How sure a sign is of which only the words tell whether it is there. */
  private static final double TORN = 0.6;

  /** From here on a sentence is taken to speak of a sign, one way or the other. */
  private static final double SPOKEN_OF = 0.4;

  /** What the words read, unchanged. */
  static Joined ofWordsAlone(List<SignRead> read) {
    return new Joined(
        new ArrayList<>(read), new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
  }

  /** Joins two readings of one text, where there is a second; else it is the first, unchanged. */
  static Joined of(
      List<SignRead> read,
      Optional<TrainedReading> model,
      Map<String, SignEntry> catalog,
      Predicate<SignRead> lowers) {
    return model.map(one -> of(read, one, catalog, lowers)).orElseGet(() -> ofWordsAlone(read));
  }

  /**
   * Joins two readings of one text.
   *
   * @param read by the words; a sign at most once
   * @param model by the model; signs that it doesn't know are left as the words read them
   * @param catalog signs that it doesn't hold are left out
   * @param lowers whether the model may lower this danger; not in a reply, since the model doesn't
   *     know the question, nor one read by a misspelt word, which the model may not know
   */
  static Joined of(
      List<SignRead> read,
      TrainedReading model,
      Map<String, SignEntry> catalog,
      Predicate<SignRead> lowers) {
    Joined joined = ofWordsAlone(read);
    Predicate<SignRead> lowered =
        new DangerTraces(model, catalog).reach(model.settings().joining().otherDangers())
            ? danger -> false
            : lowers;
    for (String sign : model.settings().signs()) {
      SignEntry entry = catalog.get(sign);
      if (entry != null && !model.sentences().isEmpty()) {
        joined.join(entry, model, lowered);
      }
    }
    return joined;
  }

  /**
   * The same, with more said of the signs that only the model read.
   *
   * @param detailed these signs, in the order of {@code added}
   */
  Joined withDetails(List<SignRead> detailed) {
    List<SignRead> all = new ArrayList<>(signs);
    for (int i = 0; i < added.size(); i++) {
      all.set(all.indexOf(added.get(i)), detailed.get(i));
    }
    return new Joined(all, detailed, struck, readYourself);
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
            unread.stream()
                .filter(one -> added.stream().noneMatch(s -> one.span().touches(s.span()))),
            struck.stream(),
            asked.stream().map(one -> new NotUnderstood(one, List.of())))
        .flatMap(all -> all)
        .sorted(Comparator.comparingInt(one -> one.span().from()))
        .toList();
  }

  private void join(SignEntry sign, TrainedReading model, Predicate<SignRead> lowers) {
    Optional<SignRead> words = signs.stream().filter(one -> one.id().equals(sign.id())).findFirst();
    Joining joining = model.settings().joining();
    if (sign.redFlag()) {
      if (!words.map(SignRead::present).orElse(false)) {
        joinDanger(sign, model, joining);
      } else if (lowers.test(words.get())
          && DangerTraces.spokenOf(sign.id(), model) < joining.dangerLowered()) {
        signs.remove(words.get());
        readYourself.add(new ReadYourself(words.get().span(), sign.name()));
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
    boolean torn = !notSo && isTorn(sign, denied, joining);
    words.ifPresent(signs::remove);
    if (torn && so && !present) {
      add(words.get(), sign, true, denied, TORN);
    } else if (present && (!absent || sure >= sureNot)) {
      add(so ? words.get() : null, sign, true, reported, sure);
    } else if (torn && absent) {
      TextSpan span = new TextSpan(denied.from(), denied.to());
      struck.add(new NotUnderstood(span, List.of(sign.id())));
    } else if (absent) {
      add(notSo ? words.get() : null, sign, false, denied, sureNot);
    } else if (so) {
      struck.add(new NotUnderstood(words.get().span(), List.of(sign.id())));
    }
  }

  /**
   * Whether the very sentence that denies a sign perhaps reports it: "no pins, and the thread
   * snapped". The model then knows what it speaks of and not which way: the words decide that, and
   * where they say nothing of it, it is asked.
   */
  private static boolean isTorn(SignEntry sign, SentenceSaid denied, Joining joining) {
    Said said = denied.said(sign.id());
    return said.reported() >= joining.torn() && said.reported() + said.denied() >= SPOKEN_OF;
  }

  private static boolean isRead(double confidence, Weights weights, boolean byWords) {
    return confidence >= (byWords ? weights.kept() : weights.added());
  }

  private void add(
      SignRead words, SignEntry sign, boolean present, SentenceSaid sentence, double confidence) {
    if (words != null) {
      signs.add(words.readAs(words.because(), words.span(), confidence));
      return;
    }
    TextSpan span = new TextSpan(sentence.from(), sentence.to());
    SignRead read =
        new SignRead(sign.id(), present, null, null, null, null, sign.name(), span, confidence);
    added.add(read);
    signs.add(read);
  }

  private void joinDanger(SignEntry sign, TrainedReading model, Joining joining) {
    SentenceSaid reported = model.most(sign.id(), Said::reported).orElseThrow();
    double raised = reported.said(sign.id()).reported();
    SentenceSaid spoken = model.most(sign.id(), DangerTraces::spokenOf).orElseThrow();
    if (raised >= joining.dangerRaised()) {
      signs.removeIf(one -> one.id().equals(sign.id()));
      add(null, sign, true, reported, raised);
    } else if (DangerTraces.spokenOf(spoken.said(sign.id())) >= joining.dangerShown()) {
      readYourself.add(new ReadYourself(new TextSpan(spoken.from(), spoken.to()), sign.name()));
    }
  }
}
