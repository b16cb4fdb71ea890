package easewright.intake;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.mapping;
import static java.util.stream.Collectors.toList;

import easewright.english.Likeness;
import easewright.english.Mention;
import easewright.english.Mentions;
import easewright.intake.Reading.ChangeRead;
import easewright.intake.Reading.NotUnderstood;
import easewright.number.Amount;
import easewright.number.TextSpan;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Finds what speaks of the garment, or of cloth that was pinned or pinched and measured, and was
 * read as nothing; and what it may mean.
 */
final class Unread {
  private static final int MOST_PERHAPS = 3;
  private static final int MOST_PLACES = 5;

  /** How it lies off the body is no sign. */
  private static final String ON_TABLE = "on the table";

  private final Lexicon lexicon;
  private final Likeness likeness;
  private final NamedPhrases heldOut;

  /**
   * @param sayings every phrase of a sign
   * @param usual signs that wearers report most
   */
  Unread(Lexicon lexicon, List<Saying> sayings, Collection<String> usual) {
    this.lexicon = lexicon;
    this.likeness =
        new Likeness(
            sayings.stream().collect(groupingBy(Saying::of, mapping(Saying::elements, toList()))),
            usual);
    this.heldOut = NamedPhrases.ofPairs("ways of holding out", lexicon);
  }

  /**
   * @param amounts every length of the text
   */
  List<NotUnderstood> in(
      Post post,
      List<Amount> amounts,
      Map<String, Mentions> elements,
      List<Match> said,
      List<Match> suspected,
      List<ChangeRead> earlier,
      Told told) {
    List<TextSpan> read =
        Stream.of(
                Stream.concat(said.stream(), suspected.stream())
                    .map(match -> post.span(match.first(), match.last())),
                earlier.stream().map(ChangeRead::span),
                told.spans().stream())
            .flatMap(spans -> spans)
            .toList();
    Mentions held = heldOut.in(post);
    List<NotUnderstood> found = new ArrayList<>();
    for (int first = 0; first < post.words().size(); ) {
      int end = Whereabouts.clauseEnd(post, first) + 1;
      TextSpan span = post.span(first, end - 1);
      boolean measured =
          !held.from(first, end - 1).isEmpty()
              && amounts.stream().anyMatch(one -> span.touches(one.span()));
      if ((measured || isOfTheGarment(post, first, end))
          && read.stream().noneMatch(span::touches)) {
        int from = first;
        List<Mention> here =
            elements.values().stream().flatMap(all -> all.from(from, end - 1).stream()).toList();
        found.add(new NotUnderstood(span, likeness.likest(here, MOST_PERHAPS)));
      }
      first = end;
    }
    return found;
  }

  /**
   * What a text says is seen without saying where: "it rides up". Only where nothing else was read,
   * so that nothing said with its place is asked for again.
   */
  List<NotUnderstood> unplaced(Post post) {
    List<NotUnderstood> found = new ArrayList<>();
    for (int first = 0; first < post.words().size(); ) {
      int end = Whereabouts.clauseEnd(post, first) + 1;
      List<Mention> here = post.mentions().from(first, end - 1);
      List<Mention> ideas = here.stream().filter(one -> lexicon.isIdea(one.name())).toList();
      boolean onTable = !post.cues(ON_TABLE).from(first, end - 1).isEmpty();
      if (!ideas.isEmpty()
          && !onTable
          && here.stream().noneMatch(one -> lexicon.isPart(one.name()))) {
        List<String> perhaps = likeness.having(ideas, MOST_PLACES);
        if (perhaps.size() > 1) {
          found.add(new NotUnderstood(post.span(first, end - 1), perhaps, true));
        }
      }
      first = end;
    }
    return found;
  }

  /** It names a piece and says something of it. */
  private boolean isOfTheGarment(Post post, int first, int end) {
    List<String> named = post.mentions().from(first, end - 1).stream().map(Mention::name).toList();
    return named.stream().anyMatch(lexicon::isPart) && named.stream().anyMatch(lexicon::isIdea);
  }
}
