package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.intake.Reading.ChangeRead;
import easewright.intake.Reading.TextRead;
import easewright.intake.Told;
import easewright.intake.Told.EdgeRead;
import easewright.intake.Told.SizeRead;
import easewright.intake.Told.TrialRead;
import easewright.size.LabelReading;
import easewright.size.Region;
import easewright.size.SizeLabel;
import java.util.List;
import java.util.Objects;

/** Adds to a draft what a text says about the toile, earlier toiles and trials. */
final class TextToile {
  private final DraftFitting draft;

  TextToile(DraftFitting draft) {
    this.draft = draft;
  }

  /**
   * @param bySheet whether a sheet says what the design is
   */
  void put(Told told, boolean bySheet) {
    if (!bySheet) {
      told.design().forEach(this::design);
    }
    told.making().forEach(this::making);
    told.edges().forEach(this::edge);
    told.trials().forEach(this::trial);
    told.sizes().forEach(this::size);
    if (told.measuredBy() != null && !draft.fields().has("measuredBy")) {
      draft.fields().put("measuredBy", told.measuredBy().value());
      readAt("/measuredBy", told.measuredBy());
    }
  }

  /** Adds the system of the size cut, unless the label does not belong to it. */
  void system(TextRead read) {
    String size = draft.fields().path("sizeCut").textValue();
    if (read == null
        || size == null
        || draft.fields().has("pattern")
        || draft.fields().has("sizeSystem")) {
      return;
    }
    boolean known =
        Region.named(read.value())
            .filter(region -> !LabelReading.of(SizeLabel.parse(size), region).isEmpty())
            .isPresent();
    if (known) {
      draft.fields().put("sizeSystem", read.value());
      readAt("/sizeSystem", read);
    }
  }

  private void readAt(String pointer, TextRead read) {
    draft.readAt(pointer, read.span(), read.confidence(), null);
  }

  private void design(TextRead read) {
    int gap = read.value().indexOf(' ');
    String field = read.value().substring(0, gap);
    if (!draft.fields().path("design").has(field)) {
      draft.fields().withObject("/design").put(field, read.value().substring(gap + 1));
      readAt("/design/" + field, read);
    }
  }

  private void making(TextRead read) {
    int gap = read.value().indexOf(' ');
    String field = read.value().substring(0, gap);
    String value = read.value().substring(gap + 1);
    if (!draft.fields().path("making").has(field)) {
      ObjectNode making = draft.fields().withObject("/making");
      if (value.chars().allMatch(Character::isDigit)) {
        making.put(field, Integer.parseInt(value));
      } else {
        making.put(field, value);
      }
      readAt("/making/" + field, read);
    }
  }

  private void edge(EdgeRead read) {
    for (JsonNode sent : draft.fields().path("garment").path("edges")) {
      if (read.edge().equals(sent.path("edge").textValue())) {
        return;
      }
    }
    ArrayNode edges = draft.fields().withObject("/garment").withArray("edges");
    ObjectNode edge = edges.addObject().put("edge", read.edge());
    DraftFitting.putIfSaid(edge, "length", read.length());
    if (read.cut() != null || read.width() != null || read.kind() != null) {
      ObjectNode elastic = edge.putObject("elastic");
      DraftFitting.putIfSaid(elastic, "cut", read.cut());
      DraftFitting.putIfSaid(elastic, "width", read.width());
      DraftFitting.putIfSaid(elastic, "kind", read.kind());
      DraftFitting.putIfSaid(elastic, "putOn", read.putOn());
    }
    draft.readAt("/garment/edges/" + (edges.size() - 1), read.span(), read.confidence(), null);
  }

  private void trial(TrialRead read) {
    ArrayNode trials = draft.fields().withArray("trials");
    for (JsonNode sent : trials) {
      if (read.adjustment().equals(sent.path("adjustment").textValue())) {
        return;
      }
    }
    if (trials.size() < TriedReader.MOST_TRIALS) {
      ObjectNode trial = trials.addObject().put("adjustment", read.adjustment());
      DraftFitting.putIfSaid(trial, "amount", read.amount());
      DraftFitting.putIfSaid(trial, "how", read.how());
      DraftFitting.putIfSaid(trial, "outcome", read.outcome());
      draft.readAt("/trials/" + (trials.size() - 1), read.span(), read.confidence(), null);
    }
  }

  private void size(SizeRead read) {
    ObjectNode toile = earlier("size", read.size());
    if (toile != null) {
      DraftFitting.putIfSaid(toile, "outcome", read.outcome());
      changed(toile, read.better(), read.worse());
      draft.readAt(last("earlier"), read.span(), read.confidence(), null);
    }
  }

  /** A change made. */
  void change(ChangeRead read) {
    ObjectNode change = earlier("adjustment", read.adjustment());
    if (change != null) {
      DraftFitting.putIfSaid(change, "amount", read.amount());
      DraftFitting.putIfSaid(change, "outcome", read.outcome());
      changed(change, read.better(), read.worse());
      draft.readAt(last("earlier"), read.span(), read.confidence(), null);
    }
  }

  private String last(String list) {
    return "/" + list + "/" + (draft.fields().path(list).size() - 1);
  }

  /** A new entry of the list; null where it is known already or the list is full. */
  private ObjectNode earlier(String field, String value) {
    for (JsonNode sent : draft.fields().path("earlier")) {
      if (Objects.equals(value, sent.path(field).textValue())) {
        return null;
      }
    }
    ArrayNode earlier = draft.fields().withArray("earlier");
    return earlier.size() < TriedReader.MOST_EARLIER ? earlier.addObject().put(field, value) : null;
  }

  private static void changed(ObjectNode entry, List<String> better, List<String> worse) {
    better.forEach(sign -> entry.withArray("better").add(sign));
    worse.forEach(sign -> entry.withArray("worse").add(sign));
  }
}
