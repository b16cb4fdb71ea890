package easewright.rulebook;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.commonmark.node.FencedCodeBlock;
import org.commonmark.node.Heading;
import org.commonmark.node.Node;
import org.commonmark.parser.IncludeSourceSpans;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.text.TextContentRenderer;

/** Takes rule files and their pages apart: names, metadata, comparisons, cases. */
final class RuleReader {
  private static final Pattern RULE =
      Pattern.compile("^rule \"([^\"]+)\"\\s*$(.*?)^end\\s*$", Pattern.MULTILINE | Pattern.DOTALL);
  private static final Pattern METADATA =
      Pattern.compile("^\\s*@(\\w+)\\(\"(.*)\"\\)\\s*$", Pattern.MULTILINE);
  private static final Pattern QUOTED = Pattern.compile("\"([^\"]*)\"");

  /** What a fence of a case begins with; its kind follows. */
  private static final String CASE = "yaml ";

  /** What is added to the fitting of a case, one at a time. */
  private static final String WITH_EACH = "with each";

  private static final Parser MARKDOWN =
      Parser.builder().includeSourceSpans(IncludeSourceSpans.BLOCKS).build();
  private static final TextContentRenderer PLAIN = TextContentRenderer.builder().build();

  private RuleReader() {}

  /** The kebab-case id of a name in words. */
  static String id(String words) {
    return words.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
  }

  static List<RuleText> rules(
      String file, String folder, String topic, String text, Vocabulary vocabulary) {
    List<RuleText> rules = new ArrayList<>();
    Matcher rule = RULE.matcher(text);
    while (rule.find()) {
      String name = rule.group(1);
      if (!id(name.split(":", 2)[0]).equals(file) || !name.contains(":")) {
        throw new RuleBookFault(
            "Rule \""
                + name
                + "\" stands in "
                + file
                + ".dslr: its name must be that, a colon, and"
                + " the situation.");
      }
      String body = rule.group(2);
      rules.add(
          new RuleText(
              file,
              folder,
              topic,
              key(file, rules.size()),
              name,
              metadata(body, "summary"),
              metadata(body, "source"),
              metadata(body, "since"),
              vocabulary.comparisons(body),
              1 + line(text, rule.start()),
              METADATA.matcher(body).replaceAll("").strip()));
    }
    if (rules.isEmpty()) {
      throw new RuleBookFault(file + ".dslr holds no rule.");
    }
    return rules;
  }

  private static String metadata(String body, String key) {
    return METADATA
        .matcher(body)
        .results()
        .filter(found -> found.group(1).equals(key))
        .map(found -> found.group(2))
        .findFirst()
        .orElse("");
  }

  /** How many lines end before a place in a text. */
  private static int line(String text, int place) {
    return (int) text.substring(0, place).chars().filter(c -> c == '\n').count();
  }

  /**
   * A rule file as the engine reads it: every quoted name in its sentences turned into an id.
   * Metadata is left out and rules are called by {@link RuleText#key()}, since the engine's
   * expander and parser stumble over an apostrophe or the word "expander" in free text.
   */
  static String forEngine(String file, String text) {
    StringBuilder all = new StringBuilder();
    int number = 0;
    for (String line : text.lines().toList()) {
      if (line.startsWith("rule ")) {
        all.append("rule \"").append(key(file, number++)).append('"');
      } else if (!line.strip().startsWith("@")) {
        all.append(QUOTED.matcher(line).replaceAll(RuleReader::quotedId));
      }
      all.append('\n');
    }
    return all.toString();
  }

  private static String key(String file, int number) {
    return file + "/" + number;
  }

  private static String quotedId(MatchResult quoted) {
    return "\"" + id(quoted.group(1)) + "\"";
  }

  static RulePage page(String id, String topic, String path, String markdown, YAMLMapper yaml) {
    List<RulePage.RuleCase> cases = new ArrayList<>();
    String title = "";
    String heading = "";
    for (Node node = MARKDOWN.parse(markdown).getFirstChild();
        node != null;
        node = node.getNext()) {
      if (node instanceof Heading) {
        heading = PLAIN.render(node).strip();
        title = title.isEmpty() ? heading : title;
      } else if (node instanceof FencedCodeBlock block && block.getInfo().startsWith(CASE)) {
        int line = block.getSourceSpans().get(0).getLineIndex() + 1;
        cases.add(ruleCase(id, heading, line, block, yaml));
      }
    }
    return new RulePage(id, topic, path, title, markdown, cases);
  }

  private static RulePage.RuleCase ruleCase(
      String id, String heading, int line, FencedCodeBlock block, YAMLMapper yaml) {
    try {
      JsonNode body = yaml.readTree(block.getLiteral());
      List<JsonNode> withEach = new ArrayList<>();
      body.path(WITH_EACH).forEach(withEach::add);
      return new RulePage.RuleCase(
          block.getInfo().substring(CASE.length()).strip(),
          heading,
          line,
          body.has(WITH_EACH) ? body.withObject("given") : body.path("given"),
          withEach,
          body.path("then"));
    } catch (JsonProcessingException e) {
      throw new RuleBookFault(
          id + ".md, \"" + heading + "\": the case cannot be read: " + e.getMessage());
    }
  }
}
