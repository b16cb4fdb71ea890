package easewright.http;

import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.answering.RoundReader;
import easewright.clinic.Caller;
import easewright.clinic.Case;
import easewright.clinic.ClinicStore;
import easewright.clinic.Clinics;
import easewright.clinic.Key;
import easewright.clinic.Role;
import easewright.photo.TestPictures;
import easewright.request.RequestJson;
import easewright.saying.ClinicNotes;
import java.nio.charset.StandardCharsets;

/** A clinic with a key of every kind, and a case with one round and one photo. */
record StockedClinic(
    String id,
    Caller caller,
    Key organiser,
    Key helper,
    Key revoked,
    Key link,
    Case open,
    String photo) {
  static final String ROUND =
      "{\"body\": {\"bust\": \"94 cm\", \"underbust\": \"77 cm\"},"
          + " \"text\": \"The band rides up at the back.\"}";

  static StockedClinic in(ClinicStore store, RoundReader fittings) {
    Clinics.Opened opened = store.clinics().open("Thursday sewing circle", "Odile", 90);
    Caller caller = store.keys().holder(opened.key().text()).orElseThrow();
    Key helper = store.keys().issue(caller, Role.HELPER, "Perrin");
    Key revoked = store.keys().issue(caller, Role.HELPER, "Isaura");
    store.keys().revoke(caller, revoked.id());
    String id = store.cases().open(caller, "Wrenna").id();
    store
        .rounds()
        .add(caller, id, fittings.read(RequestJson.parse(ROUND.getBytes(StandardCharsets.UTF_8))));
    store.cases().note(caller, id, "Ask about the elastic.");
    String photo =
        store.photos().add(caller, id, 1, "The left armhole", TestPictures.clean(40, 30)).id();
    Key link = store.keys().issueLink(caller, id);
    return new StockedClinic(
        opened.clinic().id(),
        caller,
        opened.key(),
        helper,
        revoked,
        link,
        store.cases().story(caller, id).current(),
        photo);
  }

  /** All its contents except the audit log. */
  String contents(ClinicStore store) {
    return new ObjectMapper()
        .valueToTree(ClinicNotes.ExportNote.of(store.clinics().export(caller)))
        .toString();
  }
}
