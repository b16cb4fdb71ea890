package easewright.saying;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.databind.JsonNode;
import easewright.clinic.Case;
import easewright.clinic.GroupReply;
import easewright.clinic.Note;
import easewright.clinic.Photo;
import easewright.clinic.Queue;
import easewright.clinic.Round;
import easewright.clinic.Story;
import easewright.naming.KebabCase;
import easewright.saying.ClinicNotes.HolderNote;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Cases in the contract's form; times are ISO 8601 in UTC. */
public final class CaseNotes {
  private CaseNotes() {}

  private static String orNone(Instant time) {
    return time == null ? null : time.toString();
  }

  /** A case in its current state. */
  public record CaseNote(
      String id,
      String nickname,
      String state,
      int version,
      HolderNote holder,
      int rounds,
      String openedAt,
      String changedAt,
      String waitingSince,
      boolean redFlag,
      boolean stuck,
      String cause,
      String sign,
      String sheet,
      String sizeCut) {
    /** A case in its current state. */
    public static CaseNote of(Case one) {
      Optional<Case.Gist> last = Optional.ofNullable(one.last());
      return new CaseNote(
          one.id(),
          one.nickname(),
          one.closed() ? "closed" : "open",
          one.version(),
          one.holder() == null ? null : HolderNote.of(one.holder()),
          one.rounds(),
          one.openedAt().toString(),
          one.changedAt().toString(),
          orNone(one.waitingSince()),
          last.map(Case.Gist::redFlag).orElse(false),
          one.stuck(),
          last.map(Case.Gist::cause).orElse(null),
          last.map(Case.Gist::sign).orElse(null),
          last.map(Case.Gist::sheet).orElse(null),
          last.map(Case.Gist::sizeCut).orElse(null));
    }

    /** The same without the likely cause of the latest advice. */
    CaseNote withoutCause() {
      return new CaseNote(
          id,
          nickname,
          state,
          version,
          holder,
          rounds,
          openedAt,
          changedAt,
          waitingSince,
          redFlag,
          stuck,
          null,
          sign,
          sheet,
          sizeCut);
    }
  }

  /** A case and its position in the queue. */
  public record QueueEntryNote(
      @JsonProperty("case") CaseNote current, String reason, String group) {
    static QueueEntryNote of(Queue.Entry entry) {
      return new QueueEntryNote(
          CaseNote.of(entry.current()), KebabCase.of(entry.reason()), entry.group());
    }
  }

  /** Cases with the same question. */
  public record QueueGroupNote(String key, String cause, String sign, List<String> cases) {
    static QueueGroupNote of(Queue.Group group) {
      return new QueueGroupNote(
          group.key(), group.cause(), group.sign(), group.cases().stream().map(Case::id).toList());
    }
  }

  /** The open cases in the order in which to answer them. */
  public record QueueNote(List<QueueEntryNote> entries, List<QueueGroupNote> groups) {
    /** The queue of a clinic. */
    public static QueueNote of(Queue queue) {
      return new QueueNote(
          queue.entries().stream().map(QueueEntryNote::of).toList(),
          queue.groups().stream().map(QueueGroupNote::of).toList());
    }
  }

  /** The outcome for a case answered in a group reply. */
  public record GivenNote(
      @JsonProperty("case") String caseId,
      boolean answered,
      String refusal,
      Integer version,
      String holder) {
    /** The outcome for one case. */
    public static GivenNote of(GroupReply.Given given) {
      return new GivenNote(
          given.caseId(),
          given.refusal() == null,
          given.refusal() == null ? null : KebabCase.of(given.refusal()),
          given.version(),
          given.holder());
    }
  }

  /** An author. */
  public record AuthorNote(String name, String role) {
    static AuthorNote of(Round.Author author) {
      return new AuthorNote(author.name(), KebabCase.of(author.role()));
    }
  }

  /** A reply as posted. */
  public record ReplyNote(String text, String by, String at) {
    static ReplyNote of(Round.Reply reply) {
      return new ReplyNote(reply.text(), reply.by(), reply.at().toString());
    }
  }

  /** A round; {@code cautions} are given while the advice they belong to is not shown yet. */
  public record RoundNote(
      int number,
      String addedAt,
      AuthorNote by,
      String post,
      JsonNode request,
      JsonNode advice,
      JsonNode cautions,
      ReplyNote reply,
      String outcome,
      String outcomeSaid) {
    /** A round, for those who answer it. */
    public static RoundNote of(Round round) {
      return of(round, true);
    }

    /** The same for the wearer: until a helper has replied, only the cautions of the advice. */
    public static RoundNote forWearer(Round round) {
      return of(round, round.reply() != null);
    }

    private static RoundNote of(Round round, boolean withAdvice) {
      JsonNode advice = round.fitted().advice();
      return new RoundNote(
          round.number(),
          round.addedAt().toString(),
          AuthorNote.of(round.by()),
          round.fitted().post(),
          round.request(),
          withAdvice ? advice : null,
          withAdvice ? null : advice.path("cautions"),
          round.reply() == null ? null : ReplyNote.of(round.reply()),
          round.outcome() == null ? null : KebabCase.of(round.outcome()),
          round.outcomeSaid());
    }
  }

  /** A note. */
  public record NoteNote(String at, AuthorNote by, String text) {
    /** A note. */
    public static NoteNote of(Note note) {
      return new NoteNote(note.at().toString(), AuthorNote.of(note.by()), note.text());
    }
  }

  /** A photo without its pixels, which have an address of their own. */
  public record PhotoNote(
      String id, int round, String addedAt, AuthorNote by, String alt, int width, int height) {
    /** A photo without its pixels. */
    public static PhotoNote of(Photo photo) {
      return new PhotoNote(
          photo.id(),
          photo.round(),
          photo.addedAt().toString(),
          AuthorNote.of(photo.by()),
          photo.alt(),
          photo.width(),
          photo.height());
    }
  }

  /** A case with its full history. */
  public record StoryNote(
      @JsonProperty("case") CaseNote current,
      List<RoundNote> rounds,
      List<NoteNote> notes,
      List<PhotoNote> photos) {
    /** A case with its full history, for those who answer it. */
    public static StoryNote of(Story story) {
      return new StoryNote(
          CaseNote.of(story.current()),
          story.rounds().stream().map(RoundNote::of).toList(),
          story.notes().stream().map(NoteNote::of).toList(),
          story.photos().stream().map(PhotoNote::of).toList());
    }

    /** The same for the wearer: without notes, and without advice not yet replied to. */
    public static StoryNote forWearer(Story story) {
      List<Round> rounds = story.rounds();
      boolean replied = rounds.isEmpty() || rounds.get(rounds.size() - 1).reply() != null;
      CaseNote current = CaseNote.of(story.current());
      return new StoryNote(
          replied ? current : current.withoutCause(),
          rounds.stream().map(RoundNote::forWearer).toList(),
          story.notes().stream().map(NoteNote::of).toList(),
          story.photos().stream().map(PhotoNote::of).toList());
    }
  }
}
