package easewright.fuzz;

import static java.nio.charset.StandardCharsets.UTF_8;
import static java.util.Map.entry;

import easewright.answering.RoundReader;
import easewright.clinic.Caller;
import easewright.clinic.Case;
import easewright.clinic.ClinicStore;
import easewright.clinic.Clinics;
import easewright.clinic.Fitted;
import easewright.clinic.Key;
import easewright.clinic.NotHere;
import easewright.clinic.Photo;
import easewright.clinic.Role;
import easewright.photo.TestPictures;
import easewright.request.RequestJson;
import java.util.Map;
import org.apache.commons.codec.digest.HmacAlgorithms;
import org.apache.commons.codec.digest.HmacUtils;

/**
 * A clinic with two cases that ask the same, a helper, and a link for the first case's wearer. The
 * first case has a photo. A third case is answered, and its reply is shared by a link.
 */
public record KeptClinic(
    ClinicStore store,
    String id,
    Caller caller,
    Key organiser,
    Key helper,
    String caseId,
    Key link,
    String photo,
    String answeredCase,
    String shared,
    String feed) {
  private static final byte[] ROUND =
      ("{\"body\": {\"bust\": \"94 cm\", \"underbust\": \"77 cm\"}, \"text\": \"The band rides up at"
              + " the back.\", \"signs\": [{\"sign\": \"band-pulls-off-the-body\"}]}")
          .getBytes(UTF_8);

  /** Opens it. */
  public static KeptClinic in(ClinicStore store, RoundReader fittings) {
    Clinics.Opened opened = store.clinics().open("Thursday sewing circle", "Odile", 90);
    Caller caller = store.keys().holder(opened.key().text()).orElseThrow();
    Key helper = store.keys().issue(caller, Role.HELPER, "Perrin");
    Fitted fitted = fittings.read(RequestJson.parse(ROUND));
    String id = store.rounds().open(caller, "Wrenna", fitted).id();
    store.rounds().open(caller, "Tamsel", fitted);
    Key link = store.keys().issueLink(caller, id);
    Photo photo = store.photos().add(caller, id, 1, "left armhole", TestPictures.clean(40, 30));
    Case answered = store.rounds().open(caller, "Orsel", fitted);
    store.rounds().reply(caller, answered.id(), 1, answered.version(), "Pin it first.");
    return new KeptClinic(
        store,
        opened.clinic().id(),
        caller,
        opened.key(),
        helper,
        id,
        link,
        photo.id(),
        answered.id(),
        store.links().share(caller, answered.id(), 1),
        store.links().issueFeed(caller));
  }

  /** What forms of a key's holder carry. */
  public static String token(Key key) {
    return new HmacUtils(HmacAlgorithms.HMAC_SHA_256, "Bearer " + key.text())
        .hmacHex("a form of the desk");
  }

  /** What the parameters of a path stand for here, those of the handbook and the like included. */
  public Map<String, String> names(String path) {
    return Map.ofEntries(
        entry("clinic", id),
        entry("case", path.endsWith("/share") ? answeredCase : caseId),
        entry("photo", photo),
        entry("key", helper.id()),
        entry("link", link(path)),
        entry("number", "1"),
        entry("group", "band-too-long.band-pulls-off-the-body"),
        entry("id", thing(path)),
        entry("place", "side-seam"),
        entry("sign", "band-rides-up-at-the-back"),
        entry("change", "take-in-the-band"),
        entry("kind", "unreadable"),
        entry("name", "first-fitting.json"));
  }

  private String link(String path) {
    if (path.startsWith("/desk/shared/")) {
      return shared;
    }
    return path.startsWith("/desk/feed/") ? feed : link.text();
  }

  private static String thing(String path) {
    if (path.startsWith("/rules/signs")) {
      return "band-rides-up-at-the-back";
    }
    if (path.startsWith("/rules/adjustments")) {
      return "take-in-the-band";
    }
    return path.startsWith("/rules") ? "band-too-long" : "quillmere-top";
  }

  /** The version to name in a change; 0 when what is to be changed is gone. */
  public int version(boolean ofClinic) {
    try {
      return ofClinic
          ? store.clinics().read(caller).version()
          : store.cases().story(caller, caseId).current().version();
    } catch (NotHere gone) {
      return 0;
    }
  }

  /** The version to name in a change of the clinic's voice; 0 when the clinic is gone. */
  public int versionOfVoice() {
    try {
      return store.voices().read(caller).version();
    } catch (NotHere gone) {
      return 0;
    }
  }

  /** Whether a case or more is still as it was opened. */
  public boolean isWhole() {
    return store.keys().holder(organiser.text()).isPresent()
        && store.keys().holder(helper.text()).isPresent()
        && store.keys().holder(link.text()).isPresent()
        && version(true) < 4
        && version(false) < 8;
  }

  /** All that is in it, but who did what. */
  public String contents() {
    return store.clinics().export(caller).toString();
  }
}
