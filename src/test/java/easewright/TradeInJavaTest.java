package easewright;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.sun.source.tree.AnnotationTree;
import com.sun.source.tree.BinaryTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.ExpressionTree;
import com.sun.source.tree.LiteralTree;
import com.sun.source.tree.MethodInvocationTree;
import com.sun.source.tree.NewClassTree;
import com.sun.source.tree.ParenthesizedTree;
import com.sun.source.tree.Tree;
import com.sun.source.tree.UnaryTree;
import com.sun.source.tree.VariableTree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreePath;
import com.sun.source.util.TreePathScanner;
import com.sun.source.util.Trees;
import easewright.rulebook.EverydayWords;
import easewright.rulebook.RuleBookSource;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;

/**
 * What a wearer or teacher can see, and every number of the trade, stands in {@code rules/} or
 * beside the schema of pattern sheets, not in Java. The compiler's own trees are read, so comments
 * and annotations (tools of assistants, options of the command line) don't count.
 */
class TradeInJavaTest {
  private static final Path MAIN = Path.of("src/main/java");
  private static final int SENTENCE = 4;

  /** A package or class, and why sentences may stand in it. */
  private static final Map<String, String> SENTENCES =
      Map.ofEntries(
          Map.entry("batch", "for developers of other programs: messages of a topic"),
          Map.entry("cli", "for who writes rules or runs the service, at a terminal"),
          Map.entry("guard", "for developers of other programs: faults of HTTP, headers"),
          Map.entry("http", "for developers of other programs: faults of HTTP"),
          Map.entry("mcp", "for assistants: faults of the protocol"),
          Map.entry("operation", "for who runs the service: health, log, options"),
          Map.entry("rulebook", "for who writes rules: faults of a book, which has no words yet"),
          Map.entry("answering.OwnBook", "for who writes rules: faults of a book"),
          Map.entry("answering.PageCases", "for who writes rules: why a case fails"),
          Map.entry("answering.PatternFolder", "for who runs the service: files of a folder"),
          Map.entry("clinic.FileFault", "for who runs the service: state of the store"),
          Map.entry("clinic.FileHold", "for who runs the service: text of the lock file"),
          Map.entry("clinic.Database", "for who runs the service: state of the store"),
          Map.entry("clinic.StoreServer", "for who runs the service: state of the store"),
          Map.entry("clinic.StoreFailure", "for who runs the service: state of the store"),
          Map.entry("desk.PageSafety", "for browsers: a header"),
          Map.entry("desk.SignedIn", "technical: what a form's code is made of"),
          Map.entry("desk.TimeText", "technical: the form of a date"),
          Map.entry("diagnosis.Photos", "a word of the catalog's schema, to be recognised"),
          Map.entry("inference", "for developers: messages of exceptions"),
          Map.entry("saying.ServedPhoto", "for browsers: headers"),
          Map.entry("saying.Problem", "for developers of other programs: faults of HTTP"),
          Map.entry("pattern.SheetText", "the form of YAML and JSON, whatever it says"),
          Map.entry("pattern.SheetBounds", "the form of YAML and JSON, whatever it says"),
          Map.entry("pattern.SheetSchema", "the form of YAML and JSON, whatever it says"),
          Map.entry("request.RequestField", "the form of JSON, whatever it says"),
          Map.entry("request.PhotoUpload", "the form of a request, whatever it says"),
          Map.entry("request.RequestJson", "the form of JSON, whatever it says"),
          Map.entry("request.ClinicForm", "the form of JSON, whatever it says"),
          Map.entry("request.VoiceForm", "the form of JSON, whatever it says"),
          Map.entry("request.WordsToReview", "the form of JSON, whatever it says"),
          Map.entry("request.Struck", "the form of JSON, whatever it says"),
          Map.entry("measure.LineTension", "the form of a quantity, whatever it measures"),
          Map.entry("size.SizeSystem", "published: the letters of cups in each system"),
          Map.entry("measure.Dimension", "the form of a quantity, whatever it measures"),
          Map.entry("measure.Quantity", "the form of a quantity, whatever it measures"),
          Map.entry("measure.QuantityReader", "the form of a quantity, whatever it measures"),
          Map.entry("naming.NearestName", "the form of a name, whatever it names"));

  /** A package or class, and why its numbers are none of the trade. */
  private static final Map<String, String> NUMBERS =
      Map.ofEntries(
          Map.entry("access", "technical: bytes of addresses"),
          Map.entry("batch", "technical: Kafka's sizes and times"),
          Map.entry("cli", "technical: bytes, depth of folders"),
          Map.entry("clinic", "technical: bytes, seconds; statistics of how sure a share is"),
          Map.entry("desk", "technical: statuses of HTTP, rows of a page"),
          Map.entry("guard", "technical: bytes, times, statuses, order of filters"),
          Map.entry("handbook", "a drawing: pixels and angles"),
          Map.entry("http", "technical: statuses and bytes"),
          Map.entry("layout", "a search: rounds, scores, tolerances"),
          Map.entry("mcp", "technical: bytes, codes of the protocol"),
          Map.entry("modelreader", "technical: bytes, characters"),
          Map.entry("naming", "distance of two spellings"),
          Map.entry("operation", "technical: minutes, rows"),
          Map.entry("photo", "technical: pixels, bytes and marks of files"),
          Map.entry("rulebook", "technical: bounds of the engine, units, columns"),
          Map.entry("request.FaultyRequest", "technical: statuses of HTTP"),
          Map.entry("request.HiddenCharacters", "technical: characters of Unicode"),
          Map.entry("request.RequestJson", "technical: bytes"),
          Map.entry("answering.PageCases", "when a case of a page counts as proved"),
          Map.entry("pattern.SheetText", "technical: digits of a number"),
          Map.entry("pattern.PieceCheck", "form of a sheet: how exactly paper is measured"),
          Map.entry("pattern.SeamCheck", "form of a sheet: rounding of graded steps"),
          Map.entry("pattern.Span", "form of a sheet: rounding of inches at borders"),
          Map.entry("plan.Supplies", "form: what shows in the decimals of a length"),
          Map.entry("plan.Texts", "published: conversion of units"),
          Map.entry("diagnosis.UnitFormatter", "form: decimals"),
          Map.entry("diagnosis.Asking", "form: what shows in whole percentages"),
          Map.entry("english.Likeness", "arithmetic of probabilities: nats"),
          Map.entry("size.TapeSteps", "form of a chart: the step of the tape between ranges"),
          Map.entry("inference", "arithmetic of probabilities"),
          Map.entry("wording", "technical: characters"),
          Map.entry("saying", "drawings and texts: pixels, letters, decimals"),
          Map.entry("measure.Unit", "published: conversion of units"),
          Map.entry("measure.Length", "form: how finely lengths are shown"),
          Map.entry("measure.Quantity", "form: sixteenths of an inch"),
          Map.entry("measure.QuantityReader", "form: characters and digits"),
          Map.entry("measure.Rounded", "form: decimals"),
          Map.entry("measure.MeasuredPair", "form: decimals"),
          Map.entry("measure.MeasuringMethod", "published: ISO 20685, named beside each"),
          Map.entry("cloth.StretchTest", "physics: what yarn bears; three standard deviations"),
          Map.entry("cloth.StretchClass", "published: Armstrong's classes, named beside them"),
          Map.entry("check.ElasticCheck", "geometry: an ellipse, computed beside it"),
          Map.entry("check.PrintedLabels", "published: EN 13402, named beside it"),
          Map.entry("size.SizeSystem", "published: EN 13402 and others, named beside each"),
          Map.entry("intake.Sizes", "published: how bands are labelled, EN 13402-3"),
          Map.entry("number.NumberWords", "form: parts an inch is divided into"),
          Map.entry("intake.TimeSince", "the calendar"),
          Map.entry("reading", "technical: tokens and tensors of the model"),
          Map.entry("size.BandLabels", "published: EN 13402 and others, named beside each"),
          Map.entry("body.BandPressure", "physics: units of pressure"),
          Map.entry("body.CupGeometry", "geometry: the spherical cap and how it is solved"),
          Map.entry("check.Sharpening", "arithmetic: nodes of an integral"),
          Map.entry("size.ChartRow", "arithmetic: nodes of an integral"),
          Map.entry("size.Normal", "arithmetic: coefficients of the normal distribution"));

  /** Mathematics, units and percent; what these count depends on nobody's trade. */
  private static final Set<Double> ANYWHERE =
      Set.of(0.0, 1.0, 2.0, 0.5, 10.0, 100.0, 1000.0, 10_000.0, 1024.0, 25.4);

  private static final double TOLERANCE = 1e-6;
  private static final double BEYOND_ALL = 1e6;

  private static final Pattern WORD = Pattern.compile("\\p{L}[\\p{L}'’-]+|\\b[aI]\\b");

  /** Escapes, names of groups and classes of signs: not words of a regular expression. */
  private static final Pattern SYNTAX =
      Pattern.compile("\\\\p\\{\\w+}|\\\\.|\\(\\?<\\w+>|\\(\\?\\w+\\)|\\[[^\\]]*]");

  private static final Pattern SQL =
      Pattern.compile(
          "(?s)\\s*(select|insert|update|delete|bigint|pragma)\\b.*|.*:clinic\\b.*|.* order by .*");
  private static final Set<String> EXPRESSIONS =
      Set.of("compile", "matches", "replaceAll", "replaceFirst", "split");

  /** Names by which the reader of posts asks for its lists, cues and ideas. */
  private static final Set<String> LISTS = lists(RuleBookSource.read(Path.of("rules")).everyday());

  private static final List<Literal> SENTENCES_FOUND = new ArrayList<>();
  private static final List<Literal> NUMBERS_FOUND = new ArrayList<>();
  private static final List<Literal> SHOWN_MESSAGES = new ArrayList<>();

  /** Something written in the code of a class, such as "request.CheckReader". */
  private record Literal(String type, long line, String text) {
    boolean isOf(String packageOrClass) {
      return type.equals(packageOrClass) || type.startsWith(packageOrClass + ".");
    }

    @Override
    public String toString() {
      return type + ":" + line + " " + text;
    }
  }

  static {
    try {
      read();
    } catch (IOException unreadable) {
      throw new IllegalStateException(unreadable);
    }
  }

  private static Set<String> lists(EverydayWords words) {
    Set<String> names = new HashSet<>(words.reader().keySet());
    names.addAll(words.cues().keySet());
    names.addAll(words.ideas().keySet());
    return names;
  }

  private static void read() throws IOException {
    List<Path> files;
    try (Stream<Path> walk = Files.walk(MAIN)) {
      files = walk.filter(file -> file.toString().endsWith(".java")).sorted().toList();
    }
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    try (StandardJavaFileManager manager = compiler.getStandardFileManager(null, null, null)) {
      JavacTask task =
          (JavacTask)
              compiler.getTask(
                  null,
                  manager,
                  null,
                  List.of("-proc:none"),
                  null,
                  manager.getJavaFileObjectsFromPaths(files));
      Trees trees = Trees.instance(task);
      for (CompilationUnitTree unit : task.parse()) {
        new Finder(unit, trees).scan(unit, null);
      }
    }
  }

  private static final class Finder extends TreePathScanner<Void, Void> {
    private final CompilationUnitTree unit;
    private final Trees trees;
    private final String type;

    Finder(CompilationUnitTree unit, Trees trees) {
      this.unit = unit;
      this.trees = trees;
      this.type =
          unit.getSourceFile()
              .getName()
              .replaceFirst(".*easewright/", "")
              .replace(".java", "")
              .replace('/', '.');
    }

    @Override
    public Void visitAnnotation(AnnotationTree annotation, Void none) {
      return null;
    }

    @Override
    public Void visitBinary(BinaryTree sum, Void none) {
      Tree parent = getCurrentPath().getParentPath().getLeaf();
      if (!(parent instanceof BinaryTree outer && text(outer) != null)) {
        sentence(sum, text(sum));
      }
      return super.visitBinary(sum, none);
    }

    @Override
    public Void visitLiteral(LiteralTree literal, Void none) {
      Tree parent = getCurrentPath().getParentPath().getLeaf();
      if (literal.getValue() instanceof String text && !(parent instanceof BinaryTree)) {
        sentence(literal, text);
      } else if (literal.getValue() instanceof Number number) {
        number(literal, parent, number.doubleValue());
      }
      return null;
    }

    @Override
    public Void visitMethodInvocation(MethodInvocationTree call, Void none) {
      if (name(call.getMethodSelect()).matches("fault|impossible|unreadable|needed")
          && call.getArguments().toString().contains("getMessage()")) {
        SHOWN_MESSAGES.add(new Literal(type, line(call), call.getArguments().toString()));
      }
      return super.visitMethodInvocation(call, none);
    }

    /** The text of a literal or of a sum that holds one, with a sign for what is not literal. */
    private static String text(ExpressionTree one) {
      if (one instanceof LiteralTree literal) {
        return literal.getValue() instanceof String text ? text : null;
      }
      if (one instanceof ParenthesizedTree inner) {
        return text(inner.getExpression());
      }
      if (one instanceof BinaryTree sum && sum.getKind() == Tree.Kind.PLUS) {
        String left = text(sum.getLeftOperand());
        String right = text(sum.getRightOperand());
        return left == null && right == null
            ? null
            : (left == null ? "…" : left) + (right == null ? "…" : right);
      }
      return null;
    }

    private void sentence(Tree tree, String text) {
      if (text == null || isForDevelopers() || SQL.matcher(text).matches()) {
        return;
      }
      boolean reader = type.startsWith("intake.") || type.startsWith("number.");
      if (!reader && (isExpression() || !text.contains(" "))
          || reader && (LISTS.contains(text) || text.startsWith("/"))) {
        return;
      }
      Matcher word = WORD.matcher(SYNTAX.matcher(text).replaceAll(" "));
      int words = (int) word.results().count();
      if (words >= SENTENCE) {
        SENTENCES_FOUND.add(new Literal(type, line(tree), text));
      }
    }

    /** Whether an exception is made of it, or a line of the log. */
    private boolean isForDevelopers() {
      for (TreePath at = getCurrentPath(); at != null; at = at.getParentPath()) {
        if (at.getLeaf() instanceof NewClassTree made
            && made.getIdentifier().toString().matches(".*(Exception|Error|RuleBookFault)")) {
          return true;
        }
        if (at.getLeaf() instanceof MethodInvocationTree call
            && call.getMethodSelect()
                .toString()
                .matches("(?:LOG|Log)[.].*|super|.*requireNonNull")) {
          return true;
        }
      }
      return false;
    }

    private boolean isExpression() {
      for (TreePath at = getCurrentPath(); at != null; at = at.getParentPath()) {
        if (at.getLeaf() instanceof MethodInvocationTree call
            && EXPRESSIONS.contains(name(call.getMethodSelect()))) {
          return true;
        }
      }
      return false;
    }

    private static String name(ExpressionTree method) {
      String name = method.toString();
      return name.substring(name.lastIndexOf('.') + 1);
    }

    private void number(LiteralTree literal, Tree parent, double value) {
      boolean counts = literal.getKind() == Tree.Kind.INT_LITERAL;
      boolean named =
          parent instanceof VariableTree constant
              && constant.getModifiers().toString().contains("static final");
      boolean length = named && isDouble((VariableTree) parent);
      boolean inUnits = length && ((VariableTree) parent).getName().toString().endsWith("_MM");
      if (ANYWHERE.contains(value) && !inUnits || value <= TOLERANCE || value >= BEYOND_ALL) {
        return;
      }
      if (counts && named && !length) {
        return; // how many at most, how long, how many words apart
      }
      boolean reader = type.startsWith("intake.") || type.startsWith("number.");
      if (reader && (value < 1 || counts && !length && value < 10)) {
        return; // how sure a reading is, and words apart
      }
      String text = parent instanceof UnaryTree ? parent.toString() : literal.toString();
      NUMBERS_FOUND.add(new Literal(type, line(literal), text + " in " + shortened(parent)));
    }

    private static boolean isDouble(VariableTree constant) {
      return constant.getType().toString().equals("double");
    }

    private static String shortened(Tree tree) {
      String text = tree.toString().replaceAll("\\s+", " ");
      return text.substring(0, Math.min(100, text.length()));
    }

    private long line(Tree tree) {
      return unit.getLineMap()
          .getLineNumber(trees.getSourcePositions().getStartPosition(unit, tree));
    }
  }

  @Test
  void no_sentence_that_a_wearer_or_teacher_can_see_stands_in_java() {
    assertEquals("", listed(SENTENCES_FOUND, SENTENCES.keySet()));
  }

  @Test
  void no_number_of_the_trade_stands_in_java() {
    assertEquals("", listed(NUMBERS_FOUND, NUMBERS.keySet()));
  }

  /** An exception's message is for developers, so nobody may be answered with it. */
  @Test
  void no_message_of_an_exception_is_shown_as_a_fault() {
    assertEquals("", listed(SHOWN_MESSAGES, Set.of()));
  }

  /** Else the list of exceptions would outlive what it excuses. */
  @Test
  void every_exception_excuses_something() {
    assertEquals(List.of(), idle(SENTENCES, SENTENCES_FOUND));
    assertEquals(List.of(), idle(NUMBERS, NUMBERS_FOUND));
  }

  private static String listed(List<Literal> found, Set<String> excused) {
    StringBuilder lines = new StringBuilder();
    for (Literal one : found) {
      if (excused.stream().noneMatch(one::isOf)) {
        lines.append(one).append('\n');
      }
    }
    return lines.toString();
  }

  private static List<String> idle(Map<String, String> excused, List<Literal> found) {
    Set<String> idle = new HashSet<>(new TreeMap<>(excused).keySet());
    idle.removeIf(one -> found.stream().anyMatch(literal -> literal.isOf(one)));
    return idle.stream().sorted().toList();
  }
}
