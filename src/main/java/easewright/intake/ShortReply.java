package easewright.intake;

import easewright.english.Mention;
import easewright.english.Phrases;
import easewright.english.Speech;
import easewright.intake.Reading.SignRead;
import easewright.intake.Reading.TextRead;
import easewright.number.Amount;
import easewright.number.AmountRead;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.EverydayWords;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Reads "yes, about an inch", "no" and "I can't tell" as replies to the sign asked about. */
final class ShortReply {
  /** Further on, a yes or no answers something else. */
  private static final int FIRST_WORDS = 6;

  /** A danger may be owned to later: "no ... well, yes". */
  private static final int FIRST_WORDS_ON_DANGER = 10;

  private static final double CONFIDENCE = 0.9;

  private final Phrases phrases;

  ShortReply(EverydayWords words, Speech speech) {
    this.phrases = Phrases.wordForWord(speech).add(words.replies());
  }

  /**
   * Adds the sign asked about to what was read, unless it was read already.
   *
   * @param asked the sign, or null when none was asked about
   * @return the sign if it could not be told, else nothing
   */
  List<TextRead> to(SignEntry asked, Post post, List<Amount> amounts, List<SignRead> read) {
    if (asked == null) {
      return List.of();
    }
    if (asked.redFlag()) {
      return toDanger(asked, post, read);
    }
    if (read.stream().anyMatch(one -> one.id().equals(asked.id()))) {
      return List.of();
    }
    Map<String, Mention> first =
        phrases.in(post.words(), post.sentence()).stream()
            .filter(one -> one.first() < FIRST_WORDS)
            .collect(Collectors.toMap(Mention::name, one -> one, (a, b) -> a));
    Mention unsure = first.get("unsure");
    if (unsure != null) {
      return List.of(
          new TextRead(asked.id(), post.span(unsure.first(), unsure.last()), CONFIDENCE));
    }
    Mention yes = first.get("yes");
    Mention no = first.get("no");
    if (yes == null && no == null) {
      return List.of();
    }
    boolean present = no == null || yes != null && yes.first() < no.first();
    Mention word = present ? yes : no;
    AmountRead amount =
        present && asked.amount() != null
            ? amounts.stream()
                .filter(Amount::isLength)
                .map(one -> AmountRead.of(one, "mm", 1))
                .findFirst()
                .orElse(null)
            : null;
    read.add(sign(asked, present, amount, word, post));
    return List.of();
  }

  /**
   * A danger is there as soon as one word says so, "no" or none beside it; a "no" clears it only
   * where nothing takes it back.
   */
  private List<TextRead> toDanger(SignEntry asked, Post post, List<SignRead> read) {
    if (read.stream().anyMatch(one -> one.id().equals(asked.id()) && one.present())) {
      return List.of();
    }
    Map<String, Mention> said =
        phrases.in(post.words(), post.sentence()).stream()
            .filter(one -> one.first() < FIRST_WORDS_ON_DANGER)
            .collect(Collectors.toMap(Mention::name, one -> one, (a, b) -> a));
    Mention no = said.get("no");
    Mention unsure = said.get("unsure");
    Mention yes =
        Stream.of("yes", "rather yes", "perhaps yes")
            .filter(said::containsKey)
            .map(said::get)
            .filter(
                one -> no == null || one.first() < no.first() || one.name().equals("rather yes"))
            .findFirst()
            .orElse(null);
    boolean doubt = said.containsKey("doubtful no");
    if (yes != null) {
      read.removeIf(one -> one.id().equals(asked.id()));
      read.add(sign(asked, true, null, yes, post));
    } else if (unsure != null) {
      return List.of(
          new TextRead(asked.id(), post.span(unsure.first(), unsure.last()), CONFIDENCE));
    } else if (no != null
        && !doubt
        && read.stream().noneMatch(one -> one.id().equals(asked.id()))) {
      read.add(sign(asked, false, null, no, post));
    }
    return List.of();
  }

  private static SignRead sign(
      SignEntry asked, boolean present, AmountRead amount, Mention word, Post post) {
    return new SignRead(
        asked.id(),
        present,
        null,
        null,
        null,
        amount,
        null,
        post.span(word.first(), word.last()),
        CONFIDENCE);
  }
}
