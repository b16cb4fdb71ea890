package easewright.answering;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.clinic.Caller;
import easewright.clinic.ClinicStore;
import easewright.clinic.ClinicVoice;
import easewright.clinic.ClinicVoice.PatternName;
import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSheets;
import easewright.request.VoiceForm;
import jakarta.inject.Singleton;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** How a clinic's replies are said. */
@Singleton
public class VoiceService {
  private final ClinicStore store;
  private final PatternSheets sheets;

  VoiceService(ClinicStore store, PatternSheets sheets) {
    this.store = store;
    this.sheets = sheets;
  }

  /** The sheets on offer, which a clinic may call as it likes. */
  public List<PatternSheet> patterns() {
    return sheets.offered();
  }

  /**
   * Changes the voice of the caller's clinic.
   *
   * @throws easewright.request.FaultyRequest with every fault of the request
   */
  public ClinicVoice.Kept change(Caller caller, JsonNode request) {
    VoiceForm form = new VoiceForm(request);
    int version = form.version();
    ClinicVoice voice =
        form.voice(sheets.known().stream().map(PatternSheet::id).collect(Collectors.toSet()));
    form.refuseFaulty();
    return store.voices().change(caller, version, voice);
  }

  /** The voice of the caller's clinic, to be looked at or changed. */
  public ClinicVoice.Kept read(Caller caller) {
    return store.voices().read(caller);
  }

  /** The texts that the caller's clinic often adds to replies. */
  public List<ClinicVoice.Snippet> snippets(Caller caller) {
    return store.voices().of(caller).snippets();
  }

  /** A fitting with the clinic's voice wherever the fitting names none itself. */
  public JsonNode in(Caller caller, JsonNode fitting) {
    return fitting instanceof ObjectNode fields ? in(caller, fields) : fitting;
  }

  /** The same for a fitting that is an object. */
  public ObjectNode in(Caller caller, ObjectNode fields) {
    ClinicVoice voice = store.voices().of(caller);
    ObjectNode said = fields.deepCopy();
    if (voice.plain()) {
      put(said, "voice", "plain");
    }
    put(said, "units", voice.units());
    put(said, "opening", voice.opening());
    put(said, "closing", voice.closing());
    if (!said.has("pattern")) {
      voice.patterns().stream()
          .filter(one -> isNamed(one, said.path("text").asText()))
          .filter(one -> sheets.find(one.sheet()).isPresent()) // it may have been removed since
          .findFirst()
          .ifPresent(one -> said.putObject("pattern").put("sheet", one.sheet()));
    }
    return said;
  }

  private static void put(ObjectNode request, String field, String value) {
    if (value != null && !request.has(field)) {
      request.put(field, value);
    }
  }

  private static boolean isNamed(PatternName pattern, String text) {
    return Pattern.compile(
            "(?<![\\p{L}\\p{N}])" + Pattern.quote(pattern.name()) + "(?![\\p{L}\\p{N}])",
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE)
        .matcher(text)
        .find();
  }
}
