package easewright.packaged;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import easewright.clinic.Caller;
import easewright.clinic.Case;
import easewright.clinic.ClinicStore;
import easewright.clinic.Fitted;
import easewright.clinic.Key;
import easewright.clinic.StoreAddress;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.UUID;

/**
 * Writes cases and rounds as fast as it can, and tells each on its output once the store has said
 * that it is kept; a program of its own, so that it can be killed.
 */
final class RoundWriter {
  private static final int THREADS = 3;
  private static final int ROUNDS_A_CASE = 4;

  private RoundWriter() {}

  /** Instead of a key: opens a clinic with one round and ends. */
  static final String ONCE = "once";

  /** Takes the key, and the folder or the address of the store. */
  public static void main(String[] arguments) {
    ClinicStore store =
        new ClinicStore(address(arguments[1]), Clock.systemUTC(), Duration.ofSeconds(10));
    if (arguments[0].equals(ONCE)) {
      Key key = store.clinics().open("Circle", "Odile", 30).key();
      Caller caller = store.keys().holder(key.text()).orElseThrow();
      Case open = store.cases().open(caller, "Wrenna");
      store.rounds().add(caller, open.id(), marked("once"));
      System.exit(0);
    }
    Caller caller = store.keys().holder(arguments[0]).orElseThrow();
    for (int i = 0; i < THREADS; i++) {
      new Thread(() -> write(store, caller)).start();
    }
  }

  static StoreAddress address(String where) {
    return where.startsWith("jdbc:")
        ? StoreAddress.onServer(where, "postgres", "postgres")
        : StoreAddress.inFolder(Path.of(where));
  }

  private static void write(ClinicStore store, Caller caller) {
    while (true) {
      Case open = store.cases().open(caller, "Wrenna");
      tell("case " + open.id());
      for (int no = 1; no <= ROUNDS_A_CASE; no++) {
        String mark = UUID.randomUUID().toString();
        store.rounds().add(caller, open.id(), marked(mark));
        tell("round " + open.id() + " " + no + " " + mark);
      }
    }
  }

  /** A fitting of some pages whose beginning and end bear the mark. */
  private static Fitted marked(String mark) {
    return new Fitted(
        mark, json(mark, 500), json(mark, 8000), new Case.Gist(false, null, null, null, "M"));
  }

  private static JsonNode json(String mark, int between) {
    return JsonNodeFactory.instance
        .objectNode()
        .put("first", mark)
        .put("between", "ä".repeat(between))
        .put("last", mark);
  }

  private static synchronized void tell(String line) {
    System.out.print(line + "\n"); // in one piece, so that none is told by half
    System.out.flush();
  }
}
