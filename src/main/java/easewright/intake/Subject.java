package easewright.intake;

import easewright.intake.Reading.ClothRead;
import easewright.intake.Reading.LengthRead;
import easewright.intake.Reading.SignRead;
import easewright.rulebook.EverydayWords;
import java.util.List;
import java.util.Set;

/** Tells whether a text is about the fit, cloth or making of such a garment at all. */
final class Subject {
  /** A sign read less surely than this may be a chance likeness. */
  private static final double SURE = 0.75;

  private final Lexicon lexicon;
  private final Set<String> redFlags;
  private final Set<String> parts;
  private final Phrases garment;
  private final Phrases perhaps;

  Subject(EverydayWords words, Lexicon lexicon, Set<String> redFlags) {
    this.lexicon = lexicon;
    this.redFlags = redFlags;
    this.parts = words.fine().keySet();
    this.garment = new Phrases(lexicon.speech(), 0);
    words.garment().forEach(word -> garment.add("garment", word));
    this.perhaps = new Phrases(lexicon.speech(), 0);
    words.perhaps().forEach(word -> perhaps.add("perhaps", word));
  }

  /**
   * Enough must speak for it; another thing named speaks against it. A danger counts unless only
   * another thing is spoken of: "my fingers go numb from quilting".
   */
  boolean isFit(Post post, List<SignRead> read, List<LengthRead> lengths, List<ClothRead> cloths) {
    boolean anotherThing = !post.cues("other thing").isEmpty();
    boolean ours = isNamed(garment, post) || isNamed(perhaps, post) || pieces(post) > 0;
    if (read.stream().anyMatch(one -> one.present() && redFlags.contains(one.id()))
        && (ours || !anotherThing)) {
      return true;
    }
    long score =
        2 * (isNamed(garment, post) ? 1 : 0)
            + (isNamed(perhaps, post) ? 1 : 0)
            + Math.min(2, pieces(post))
            + (lengths.isEmpty() ? 0 : 2)
            + (cloths.isEmpty() ? 0 : 1)
            + Math.min(3, read.stream().filter(one -> one.confidence() > SURE).count())
            - (post.cues("elsewhere").isEmpty() && !anotherThing ? 0 : 3);
    return score >= 2 || score == 1 && read.stream().anyMatch(SignRead::present);
  }

  private long pieces(Post post) {
    return post.mentions().stream()
        .map(Mention::name)
        .filter(
            name ->
                parts.contains(name) && lexicon.isPart(name)
                    || name.equals("breast")
                    || name.equals("bust"))
        .distinct()
        .count();
  }

  private static boolean isNamed(Phrases phrases, Post post) {
    return phrases.in(post.words(), post.sentence()).stream()
        .anyMatch(one -> !post.masked().get(one.first()));
  }
}
