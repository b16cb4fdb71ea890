package easewright.intake;

import java.util.List;

/** Whether something said is meant as so, as not so, or as neither. */
final class Polarity {
  /** How many words a "no" reaches. */
  private static final int REACH = 7;

  private static final List<String> NOUN_NO =
      List.of("no", "without", "nor", "neither", "zero", "none", "of", "from");

  private static final int NEXT_TO = 3;
  private static final List<String> AFTER_GONE =
      List.of(
          "now", "away", "completely", "entirely", "altogether", "when", "if", "thanks", "since");

  /** How something is meant. */
  enum Meant {
    SO,
    NOT_SO,
    /** Asked about, feared, remembered or said of another garment. */
    NEITHER
  }

  private final Lexicon lexicon;

  Polarity(Lexicon lexicon) {
    this.lexicon = lexicon;
  }

  /** How a phrase found is meant. */
  Meant of(Match match, Post post) {
    boolean no = isDenied(match, post);
    boolean gone = isGone(match, post);
    if (gone) {
      return Meant.NOT_SO;
    }
    if (isElsewhere(match, post) || isPast(match, post) || !no && isOnlyThought(match, post)) {
      return Meant.NEITHER;
    }
    if (match.saying().denies()) {
      return no ? Meant.SO : Meant.NEITHER; // "I put it on" says nothing against "can't get it on"
    }
    return no ? Meant.NOT_SO : Meant.SO;
  }

  /** Whether a "no" reaches what is said. */
  boolean isDenied(Match match, Post post) {
    if (isDeniedEach(match, post)) {
      return true; // "no marks and no rash" is no double denial
    }
    boolean denied = false;
    for (Mention no : post.cues("no")) {
      boolean reached =
          match.what().stream().anyMatch(one -> reaches(no, one.first(), post))
              || match.what().isEmpty() && reaches(no, match.head(), post);
      boolean own = match.said().stream().anyMatch(one -> one.covers(no.first()));
      denied ^= reached && !own;
    }
    return denied;
  }

  /** Whether every word of what is said has a "no" of its own. */
  private boolean isDeniedEach(Match match, Post post) {
    return match.what().size() > 1
        && match.what().stream()
            .allMatch(
                one ->
                    post.cues("no").stream()
                        .anyMatch(
                            no ->
                                no.last() < one.first()
                                    && one.first() - no.last() <= 2
                                    && isOfNoun(no, post)
                                    && reaches(no, one.first(), post)));
  }

  /** Whether what is said at a word is denied by this "no", and not by a nearer one of its kind. */
  boolean reaches(Mention no, int head, Post post) {
    if (no.last() >= head || post.sentence()[no.last()] != post.sentence()[head]) {
      return false;
    }
    boolean noun = isOfNoun(no, post);
    boolean nearer =
        noun
            && post.cues("no").stream()
                .anyMatch(
                    other ->
                        no.last() < other.first() && other.last() < head && isOfThing(other, post));
    if (nearer) {
      return false; // "no numbness, no tingling" denies each once
    }
    int distance = 0;
    for (int i = no.last() + 1; i <= head && distance <= REACH; i++) {
      Post.Break here = post.breaks().get(i);
      String word = post.words().get(i).plain();
      boolean or =
          word.equals("or")
              || word.equals("nor")
              || i > 0 && List.of("or", "nor").contains(post.words().get(i - 1).plain());
      if (here.compareTo(Post.Break.TURN) >= 0) {
        return false;
      }
      if (here == Post.Break.PAUSE && !(noun && (or || orFollows(i, post)))) {
        return false;
      }
      if (here == Post.Break.JOIN && !(noun && word.equals("and") && !newSubject(i + 1, post))) {
        return false;
      }
      distance += lexicon.isDropped(post.words().get(i)) ? 0 : 1;
    }
    return distance <= REACH;
  }

  private static boolean isOfNoun(Mention no, Post post) {
    return NOUN_NO.contains(post.words().get(no.last()).plain());
  }

  /** A "no" that denies a thing or that there is any, not a deed. */
  boolean isOfThing(Mention no, Post post) {
    return isOfNoun(no, post) || post.words().get(no.last()).plain().equals("nothing");
  }

  /** "No gaping, bulging or digging": the list goes on. */
  private static boolean orFollows(int from, Post post) {
    for (int i = from; i < post.words().size() && i < from + 6; i++) {
      if (i > from && post.breaks().get(i).compareTo(Post.Break.TURN) >= 0) {
        return false;
      }
      String word = post.words().get(i).plain();
      if (word.equals("or") || word.equals("nor")) {
        return true;
      }
    }
    return false;
  }

  private boolean newSubject(int word, Post post) {
    return word < post.words().size()
        && (List.of("the", "my", "it", "they", "i", "that", "this", "when")
                .contains(post.words().get(word).plain())
            || post.mentions().stream()
                .anyMatch(one -> one.first() == word && lexicon.isPart(one.name())));
  }

  /** "Used to ride up", "the gaping is gone". */
  private boolean isGone(Match match, Post post) {
    for (Mention cue : post.cues("gone")) {
      boolean own = match.said().stream().anyMatch(one -> one.covers(cue.first()));
      if (own || post.clause()[cue.first()] != post.clause()[match.head()]) {
        continue;
      }
      String words = post.words().get(cue.first()).plain();
      boolean after = cue.first() > match.head() && cue.first() - match.last() <= 5;
      boolean before = words.equals("used") && cue.first() < match.head();
      if (post.words().get(cue.last()).plain().equals("gone") && !endsThere(cue.last(), post)) {
        continue; // "it has gone all wavy"
      }
      if ((after && !match.saying().phrase().contains(words) || before)
          && post.cues("no").stream().noneMatch(no -> reaches(no, cue.first(), post))) {
        return true;
      }
    }
    return false;
  }

  private static boolean endsThere(int word, Post post) {
    int next = word + 1;
    return next >= post.words().size()
        || post.breaks().get(next) != Post.Break.NONE
        || AFTER_GONE.contains(post.words().get(next).plain());
  }

  private static boolean isElsewhere(Match match, Post post) {
    return post.cueInClause("elsewhere", match.head())
        || isOfOtherThing(match, post)
        || saysThatOne(match, post)
        || post.cues("elsewhere").stream()
            .anyMatch(
                cue ->
                    cue.first() < match.head()
                        && post.sentence()[cue.first()] == post.sentence()[match.head()]
                        && post.strongest(cue.first(), match.head()).compareTo(Post.Break.PAUSE)
                            <= 0);
  }

  /** "The waistband rides up": the thing named just before. */
  private static boolean isOfOtherThing(Match match, Post post) {
    return post.cues("other thing").stream()
        .anyMatch(
            cue ->
                post.clause()[cue.first()] == post.clause()[match.head()]
                    && Math.abs(match.head() - cue.last()) <= NEXT_TO);
  }

  /** "I bought the same one for years. That one rode up": still the bought one. */
  private static boolean saysThatOne(Match match, Post post) {
    int sentence = post.sentence()[match.head()];
    int first = match.head();
    while (first > 0 && post.sentence()[first - 1] == sentence) {
      first--;
    }
    boolean pointsBack = List.of("that", "those", "they").contains(post.words().get(first).plain());
    return pointsBack
        && post.cues("elsewhere").stream()
            .anyMatch(cue -> post.sentence()[cue.first()] == sentence - 1);
  }

  private static boolean isPast(Match match, Post post) {
    boolean past =
        post.cues("past").stream()
            .anyMatch(
                cue ->
                    post.sentence()[cue.first()] == post.sentence()[match.head()]
                        && cue.first() < match.head()
                        && post.strongest(cue.first(), match.head()).compareTo(Post.Break.TURN)
                            < 0);
    return past
        && post.cues("now").stream()
            .noneMatch(
                cue ->
                    post.sentence()[cue.first()] == post.sentence()[match.head()]
                        && cue.first() <= match.head());
  }

  private static boolean isOnlyThought(Match match, Post post) {
    return post.cues("might").stream()
        .anyMatch(
            cue ->
                cue.first() < match.head()
                    && post.sentence()[cue.first()] == post.sentence()[match.head()]
                    && match.head() - cue.last() <= REACH + 2
                    && post.strongest(cue.first(), match.head()).compareTo(Post.Break.JOIN) <= 0);
  }
}
