package easewright.intake;

import easewright.intake.Reading.SignRead;
import easewright.intake.Reading.TextRead;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.EverydayWords;
import java.util.List;
import java.util.Map;

/** Reads "yes, about an inch", "no" and "I can't tell" as replies to the sign asked about. */
final class ShortReply {
  /** Further on, a yes or no answers something else. */
  private static final int FIRST_WORDS = 6;

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
    if (asked == null || read.stream().anyMatch(one -> one.id().equals(asked.id()))) {
      return List.of();
    }
    Map<String, Mention> first =
        phrases.in(post.words(), post.sentence()).stream()
            .filter(one -> one.first() < FIRST_WORDS)
            .collect(java.util.stream.Collectors.toMap(Mention::name, one -> one, (a, b) -> a));
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
    String amount =
        present && asked.amount() != null
            ? amounts.stream()
                .filter(Amount::isLength)
                .map(one -> one.text("mm"))
                .findFirst()
                .orElse(null)
            : null;
    read.add(
        new SignRead(
            asked.id(),
            present,
            null,
            null,
            null,
            amount,
            null,
            post.span(word.first(), word.last()),
            CONFIDENCE));
    return List.of();
  }
}
