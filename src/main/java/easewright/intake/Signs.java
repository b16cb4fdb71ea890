package easewright.intake;

import easewright.deadline.Deadline;
import easewright.english.Mention;
import easewright.intake.Polarity.Meant;
import easewright.intake.Reading.SignRead;
import easewright.number.Amount;
import easewright.number.AmountRead;
import easewright.number.TextSpan;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Wording;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Finds signs said to be so or not so, with place, side, degree and amount. */
final class Signs {
  /** A danger only feared or asked about is still told, less surely. */
  private static final double FEARED = 0.5;

  private static final double LIKELY = 0.6;

  /** Names of cues. */
  private static final Set<String> SIDES = Set.of("left", "right", "both");

  private static final Set<String> DEGREES = Set.of("slight", "strong");

  private final Map<String, SignEntry> catalog;
  private final Wording wording;
  private final Map<String, List<String>> rather;
  private final Map<String, String> places;
  private final SignAmounts lengths;
  private final DeniedComplaints denied;

  Signs(RuleBookSource book, Lexicon lexicon) {
    this.catalog = book.catalog().signs();
    this.wording = book.wording();
    this.rather = book.everyday().rather();
    this.places = lexicon.lists().pairs("places of signs");
    this.lengths = new SignAmounts(catalog, lexicon, new PlacesSaid(book, lexicon.lists()));
    this.denied = new DeniedComplaints(book.everyday(), lexicon);
  }

  List<SignRead> in(Post post, List<Match> said, List<Match> denying, List<Amount> amounts) {
    Map<String, SignRead> found = new LinkedHashMap<>();
    Map<Integer, Set<String>> bySentence = new HashMap<>();
    said.forEach(
        one ->
            bySentence
                .computeIfAbsent(post.sentence()[one.head()], any -> new HashSet<>())
                .add(one.saying().of()));
    for (Match match : said) {
      Deadline.check();
      if (!isOnlyHow(match, bySentence, post)) {
        add(found, match, meant(match, post), post, amounts, said);
      }
    }
    for (Match match : denying) {
      Meant meant = meant(match, post);
      add(
          found,
          match,
          meant == Meant.SO ? Meant.NOT_SO : meant == Meant.NOT_SO ? Meant.NEITHER : meant,
          post,
          amounts,
          said);
    }
    denied
        .saidToBeFine(post, said)
        .forEach(
            (id, span) -> {
              SignRead feared = found.get(id);
              if (feared == null || feared.present() && feared.confidence() < LIKELY) {
                found.put(id, cleared(id, wording.say("cleared-by-fine"), span));
              }
            });
    denied
        .saidToBeSafe(post)
        .forEach(
            (id, span) -> found.putIfAbsent(id, cleared(id, wording.say("cleared-by-name"), span)));
    denied
        .saidNotToBe(post)
        .forEach(
            (id, span) ->
                found.putIfAbsent(id, cleared(id, wording.say("cleared-by-nothing"), span)));
    return new ArrayList<>(found.values());
  }

  /** Whether a sign is a danger to health. */
  boolean isDanger(String id) {
    SignEntry sign = catalog.get(id);
    return sign != null && sign.redFlag();
  }

  /** Whether a length can be told of a sign. */
  boolean hasAmount(String id) {
    return catalog.get(id).amount() != null;
  }

  /** Whether a plain "no" takes away what was found. */
  boolean isDenied(Match match, Post post) {
    return Polarity.isDenied(match, post);
  }

  /** Adds dangers that readers found; what was read as present stays as it is. */
  void raise(List<Danger> dangers, List<SignRead> read) {
    for (Danger one : dangers) {
      boolean known =
          read.stream().anyMatch(sign -> sign.id().equals(one.sign()) && sign.present());
      if (isDanger(one.sign()) && !known) {
        read.removeIf(sign -> sign.id().equals(one.sign()));
        read.add(
            new SignRead(
                one.sign(),
                true,
                null,
                null,
                null,
                null,
                one.because(),
                one.span(),
                one.confidence()));
      }
    }
  }

  /**
   * A sign that a trained model read, with what its words tell of it.
   *
   * @param match the words that stand for it
   * @param amounts lengths that nothing else has taken
   * @param said the signs that may claim one of them
   */
  SignRead withDetails(
      SignRead read, Match match, Post post, List<Amount> amounts, List<Match> said) {
    SignRead found = sign(match, read.present(), post, amounts, said);
    return read.with(found.side(), found.amount());
  }

  /** A length as the amount of a sign. */
  AmountRead amount(String id, Amount amount, Post post, List<Amount> amounts) {
    return lengths.inFull(id, amount, post, amounts);
  }

  /** A sign that is there, with no amount of its own. */
  SignRead there(Match match, Post post) {
    return sign(match, true, post, List.of(), List.of());
  }

  /** Whether another sign of the same sentence says it better. */
  private boolean isOnlyHow(Match match, Map<Integer, Set<String>> bySentence, Post post) {
    return bySentence.get(post.sentence()[match.head()]).stream()
        .anyMatch(other -> rather.getOrDefault(other, List.of()).contains(match.saying().of()));
  }

  /** A red flag counts however it is asked: only a plain "no" takes it away. */
  private Meant meant(Match match, Post post) {
    Meant meant = Polarity.of(match, post);
    SignEntry sign = catalog.get(match.saying().of());
    return isFeared(match, meant, sign, post) ? Meant.SO : meant;
  }

  private boolean isFeared(Match match, Meant meant, SignEntry sign, Post post) {
    return meant == Meant.NEITHER
        && sign.redFlag()
        && !Polarity.isDenied(match, post)
        && !match.saying().denies();
  }

  private void add(
      Map<String, SignRead> found,
      Match match,
      Meant meant,
      Post post,
      List<Amount> amounts,
      List<Match> said) {
    if (meant == Meant.NEITHER) {
      return;
    }
    String id = match.saying().of();
    SignRead last = found.get(id);
    boolean present = meant == Meant.SO;
    boolean better =
        last == null
            || present && !last.present()
            || present == last.present() && match.confidence() > last.confidence();
    if (better) {
      found.put(id, sign(match, present, post, amounts, said));
    }
  }

  private SignRead sign(
      Match match, boolean present, Post post, List<Amount> amounts, List<Match> said) {
    SignEntry entry = catalog.get(match.saying().of());
    return new SignRead(
        entry.id(),
        present,
        present ? place(entry, match, post) : null,
        entry.sided() ? side(match, post) : null,
        present ? degree(match, post) : null,
        present && entry.amount() != null ? lengths.of(match, post, amounts, said) : null,
        match.saying().phrase(),
        post.span(match.first(), match.last()),
        Polarity.of(match, post) == Meant.NEITHER ? FEARED : match.confidence());
  }

  private static SignRead cleared(String id, String because, TextSpan span) {
    return new SignRead(id, false, null, null, null, null, because, span, 0.85);
  }

  private String place(SignEntry sign, Match match, Post post) {
    if (sign.where() == null || sign.where().size() < 2) {
      return null;
    }
    List<String> named =
        post.mentionsInClause(post.clause()[match.head()]).stream()
            .map(one -> places.getOrDefault(one.name(), one.name().replace(' ', '-')))
            .filter(sign.where()::contains)
            .filter(place -> !sign.id().contains(place))
            .distinct()
            .toList();
    return named.size() == 1 ? named.get(0) : null;
  }

  private static String side(Match match, Post post) {
    List<String> sides =
        post.cuesInClause(match.head()).stream()
            .filter(cue -> SIDES.contains(cue.name()))
            .map(Mention::name)
            .distinct()
            .toList();
    return sides.contains("both") || sides.size() == 2
        ? "both"
        : sides.isEmpty() ? null : sides.get(0);
  }

  private static String degree(Match match, Post post) {
    return post.cuesInClause(match.head()).stream()
        .filter(cue -> DEGREES.contains(cue.name()))
        .filter(cue -> cue.first() >= match.first() - 4 && cue.last() <= match.last() + 4)
        .map(Mention::name)
        .findFirst()
        .orElse(null);
  }
}
