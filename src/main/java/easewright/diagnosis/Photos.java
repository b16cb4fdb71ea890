package easewright.diagnosis;

import easewright.diagnosis.Answer.PhotoNote;
import easewright.fitting.Fitting;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.Wording;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Which photo would show a sign. None is asked for where it takes more than looking, where a photo
 * would show nothing or too much, of a wearer who is still growing, or beside a red flag.
 */
final class Photos {
  private static final Set<String> BY_LOOKING = Set.of("glance", "try");
  private static final List<String> VIEWS = List.of("front", "side", "back");
  private static final Set<String> SEEN_FROM_THE_SIDE = Set.of("armhole", "underarm");

  private final Wording wording;
  private final boolean askable;

  Photos(Knowledge knowledge, Fitting fitting) {
    this.wording = knowledge.source().wording();
    this.askable =
        !fitting.circumstances().ids().contains("growing") && !knowledge.reportsRedFlag(fitting);
  }

  Optional<PhotoNote> of(SignEntry sign) {
    if (!askable
        || sign.noPhoto()
        || sign.redFlag()
        || sign.look() == null
        || sign.look().isEmpty()
        || !BY_LOOKING.contains(sign.effort())) {
      return Optional.empty();
    }
    String view = view(sign.where());
    String pose = sign.look().get(0);
    boolean worn = !pose.equals("flat on the table");
    return Optional.of(
        new PhotoNote(
            view,
            pose,
            wording.say(
                worn ? "photo-worn" : "photo-laid-flat",
                "view",
                wording.say("photo-" + view),
                "pose",
                wording.say("photo-" + pose.replace(' ', '-')))));
  }

  /** The view the catalog names, else the one its first place is seen in. */
  private static String view(List<String> where) {
    return where.stream()
        .filter(VIEWS::contains)
        .findFirst()
        .orElse(SEEN_FROM_THE_SIDE.contains(where.get(0)) ? "side" : "front");
  }
}
