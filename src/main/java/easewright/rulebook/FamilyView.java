package easewright.rulebook;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.rulebook.Catalog.AdjustmentEntry;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * A rule book as one family of garments sees it. Names that only other families have are gone from
 * it everywhere, so that nothing it says can lead to one.
 */
final class FamilyView {
  private static final String NOTHING_WRONG = "nothing-wrong";

  private static final String DANGER_GROUPS = "/danger/groups";

  private static final JsonMapper JSON = JsonMapper.builder().build();

  private final RuleBookSource whole;
  private final Family family;
  private final Set<String> foreign;

  FamilyView(RuleBookSource whole, Family family) {
    this.whole = whole;
    this.family = family;
    this.foreign = foreign(whole, family);
  }

  /** Ids of the signs, findings, causes, adjustments and cautions that a family does not have. */
  static Set<String> foreign(RuleBookSource whole, Family family) {
    return whole.catalog().folders().entrySet().stream()
        .filter(one -> !family.hears(one.getValue()))
        .map(Map.Entry::getKey)
        .collect(Collectors.toUnmodifiableSet());
  }

  RuleBookSource source() {
    List<RuleText> rules =
        whole.rules().stream().filter(rule -> family.hears(rule.folder())).toList();
    Set<String> files = rules.stream().map(RuleText::file).collect(Collectors.toSet());
    return new RuleBookSource(
        family.id(),
        whole.version(),
        whole.hash(),
        whole.families(),
        whole.vocabulary(),
        foreign.isEmpty() && family.instead().catalog().isEmpty() ? whole.catalog() : catalog(),
        parameters(),
        rules,
        only(whole.files(), files::contains),
        only(whole.pages(), files::contains),
        wording(),
        everyday());
  }

  /** The priors are scaled to its own share of fittings with nothing wrong, if it states one. */
  private Map<String, Parameter> parameters() {
    Family.Share own = family.nothingWrong();
    if (own == null) {
      return whole.parameters();
    }
    Map<String, Parameter> ours = new LinkedHashMap<>(whole.parameters());
    ours.computeIfPresent(
        NOTHING_WRONG,
        (id, shared) ->
            Parameter.of(id, own.value(), null, shared.what(), own.since(), own.source()));
    return ours;
  }

  private Catalog catalog() {
    Catalog all = whole.catalog();
    return new Catalog(
        entries(all.signs()),
        entries(all.causes()),
        entries(all.findings()),
        entries(all.adjustments()),
        entries(all.cautions()),
        entries(all.reasons()),
        all.practice(),
        all.folders());
  }

  private <E extends Catalog.Entry> Map<String, E> entries(Map<String, E> all) {
    Map<String, E> ours = new LinkedHashMap<>();
    all.forEach(
        (id, entry) -> {
          if (!foreign.contains(id)) {
            ours.put(id, withoutForeign(inOwnWords(entry)));
          }
        });
    return ours;
  }

  @SuppressWarnings("unchecked")
  private <E extends Catalog.Entry> E inOwnWords(E entry) {
    ObjectNode own = family.instead().catalog().get(entry.id());
    if (own == null) {
      return entry;
    }
    ObjectNode tree = JSON.valueToTree(entry);
    tree.setAll(own);
    return (E) JSON.convertValue(tree, entry.getClass());
  }

  /** What is said, with the family's own words in place of the shared ones. */
  private Wording wording() {
    Wording shared = whole.wording();
    Family.Instead own = family.instead();
    Map<String, String> sentences = new LinkedHashMap<>(shared.sentences());
    sentences.putAll(own.wording());
    Map<String, Voice> voices = new LinkedHashMap<>();
    shared
        .voices()
        .forEach(
            (language, voice) ->
                voices.put(
                    language,
                    withoutForeignNames(
                        language.equals(Voice.USUAL) && !own.voice().isEmpty()
                            ? spoken(voice, own.voice())
                            : voice)));
    return new Wording(sentences, voices);
  }

  private static Voice spoken(Voice shared, Map<String, ObjectNode> own) {
    ObjectNode voice = JSON.valueToTree(shared);
    own.forEach((file, entries) -> voice.withObjectProperty(file).setAll(entries));
    return JSON.convertValue(voice, Voice.class);
  }

  private <E extends Catalog.Entry> E withoutForeign(E entry) {
    if (entry instanceof AdjustmentEntry change
        && change.beyond() != null
        && foreign.contains(change.beyond())) {
      throw new RuleBookFault(
          "Beyond its limit %s gives way to %s, which the family %s does not have."
              .formatted(change.id(), change.beyond(), family.id()));
    }
    return withoutForeignNames(entry);
  }

  /** The same object where it names nothing foreign. */
  @SuppressWarnings("unchecked")
  private <T> T withoutForeignNames(T record) {
    JsonNode tree = JSON.valueToTree(record);
    return removed(tree) ? (T) JSON.convertValue(tree, record.getClass()) : record;
  }

  /** Removes foreign ids from lists and maps; whether there were any. */
  private boolean removed(JsonNode tree) {
    int before = tree.size();
    if (tree instanceof ObjectNode map) {
      map.remove(foreign);
    } else if (tree instanceof ArrayNode list) {
      list.removeIf(one -> foreign.contains(one.asText()));
    }
    boolean any = tree.size() < before;
    for (JsonNode one : tree) {
      any |= removed(one);
    }
    return any;
  }

  /**
   * What writers say. The words are those for the usual family, whose reading no other may change;
   * another has its own beside them, and is not called by what would be another thing.
   */
  private EverydayWords everyday() {
    EverydayWords words =
        foreign.isEmpty() ? whole.everyday() : withoutForeignNames(whole.everyday());
    return family.usual() ? words : withOwn(words).about(family.called(), family.measures().said());
  }

  /** A group of words for dangers that it writes takes the place of the shared one of that name. */
  private EverydayWords withOwn(EverydayWords words) {
    if (family.sayings() == null) {
      return words;
    }
    Map<String, Object> shared = JSON.convertValue(words, new TypeReference<>() {});
    ObjectNode all = JSON.valueToTree(RuleBookSource.both(shared, family.sayings()));
    if (JSON.valueToTree(family.sayings()).at(DANGER_GROUPS) instanceof ObjectNode own) {
      all.withObject(DANGER_GROUPS).setAll(own);
    }
    return JSON.convertValue(all, EverydayWords.class);
  }

  private static <V> Map<String, V> only(Map<String, V> all, Predicate<String> which) {
    Map<String, V> some = new LinkedHashMap<>(all);
    some.keySet()
        .retainAll(
            all.keySet().stream().filter(which).collect(Collectors.toCollection(HashSet::new)));
    return some;
  }
}
