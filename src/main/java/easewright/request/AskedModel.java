package easewright.request;

import easewright.measure.Measures;
import easewright.modelreader.ModelPrompt;
import easewright.modelreader.ModelReader;
import easewright.modelreader.ModelReading;
import easewright.rulebook.Catalog;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.Practice.CircumstanceEntry;
import easewright.rulebook.RuleBookSource;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Asks a language model, using the names of one rule book. */
final class AskedModel {
  private final ModelReader model;
  private final ModelPrompt prompt;

  AskedModel(ModelReader model, RuleBookSource book) {
    Catalog catalog = book.catalog();
    Map<String, List<String>> words = book.everyday().measurements();
    this.model = model;
    this.prompt =
        new ModelPrompt(
            catalog.signs().values().stream()
                .collect(Collectors.toMap(SignEntry::id, SignEntry::name)),
            book.measures().measurements().stream()
                .map(Measures.OfBody::id)
                .collect(
                    Collectors.toMap(
                        Function.identity(),
                        name -> String.join(", ", words.getOrDefault(name, List.of())))),
            catalog.practice().circumstances().stream()
                .collect(Collectors.toMap(CircumstanceEntry::id, CircumstanceEntry::name)));
  }

  /**
   * What the model read; nothing if it gave no usable answer.
   *
   * @param asked the sign that the text replies about, or null
   */
  ModelReading read(String text, SignEntry asked) {
    return model
        .read(text, asked == null ? null : asked.ask(), prompt)
        .orElse(ModelReading.NOTHING);
  }
}
