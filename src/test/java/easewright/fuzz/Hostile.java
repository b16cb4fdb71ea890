package easewright.fuzz;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;

import com.fasterxml.jackson.core.json.JsonWriteFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.net.URLEncoder;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** What no honest client sends. All texts hold {@link #MARK}, by which they are known again. */
final class Hostile {
  static final String MARK = "zq9";

  /** What stands in a page only if it was taken for more than text. */
  static final List<String> UNESCAPED =
      List.of("<script>zq9", "<img src=x onerror=zq9", "<svg/onload=zq9");

  private static final byte[] BYTES = {0, (byte) 0xFF, (byte) 0xC0, '"', '%', '\n', 'z'};

  private static final JsonMapper JSON =
      JsonMapper.builder().enable(JsonWriteFeature.ESCAPE_NON_ASCII.mappedFeature()).build();

  private static final List<String> TEXTS =
      List.of(
          "<script>zq9()</script>",
          "\"><img src=x onerror=zq9()>",
          "'onmouseover='zq9()</textarea></title><svg/onload=zq9()>",
          "zq9\u0000zq9",
          "\u0000",
          "zq9\uD800",
          "\uDFFFzq9",
          "zq9 \uD83E\uDDF5 e\u0301 \u202Ezq9\u2066 \uFEFF\uFFFF",
          "zq9'; delete from cases; --",
          "{zq9}{#if 1}{cdi:zq9}{/if}",
          "zq9\r\nZq9: 1\r\n\r\n",
          "../../zq9",
          "/~/~2/zq9",
          "${jndi:ldap://127.0.0.1:1/zq9}",
          "zq9".repeat(60),
          "zq9 ".repeat(1100),
          "zq9".repeat(9000),
          "1e999999999",
          "-1 cm",
          "999999999999 in",
          "34 1/0 in",
          "0 cm",
          "NaN cm",
          "\u0663\u0664 cm",
          "",
          " ");

  private static final List<String> SEGMENTS =
      List.of(
          "zq9",
          "%00zq9",
          "zq9%00",
          "..%2fzq9",
          "%2e%2e",
          "%3Cscript%3Ezq9()%3C%2Fscript%3E",
          "%22%3E%3Cimg%20src=x%20onerror=zq9()%3E",
          "%ED%A0%80zq9",
          "%FFzq9",
          "%C0%80zq9",
          "zq9;zq9=1",
          "zq9%0d%0aZq9:%201",
          "%20",
          "-1",
          "0",
          "2147483648",
          "99999999999999999999",
          "%zzzq9",
          "zq9%",
          "zq9|^`{}\\",
          "zq9".repeat(600));

  private static final Map<String, List<String>> HEADERS =
      Map.of(
          "Accept",
          List.of(
              "text/html",
              "application/json",
              "text/markdown",
              "text/plain",
              "text/csv",
              "image/svg+xml",
              "zq9/zq9",
              "zq9",
              ",,;q=",
              "application/json;q=zq9",
              "text/html;q=2,*/*;q=-1",
              "",
              "zq9".repeat(900)),
          "Content-Type",
          List.of(
              "application/json",
              "application/json; charset=zq9",
              "application/json; charset=utf-16",
              "text/plain",
              "application/yaml",
              "application/x-ndjson",
              "application/x-www-form-urlencoded",
              "multipart/form-data; boundary=zq9",
              "application/xml",
              "zq9",
              "/;=",
              ""),
          "Authorization",
          List.of(
              "Bearer", "Bearer zq9", "Basic enE5", "zq9", "Bearer ewo-zq9-zq9", "Bearer \u00ff"),
          "Cookie",
          List.of(
              "easewright-key=\"zq9", "easewright-key=zq9; easewright-key=", ";;=;zq9", "\u00ff"),
          "Host",
          List.of("zq9.example", "localhost:99999", "zq9<script>zq9()</script>", "[::1", "zq9:zq9"),
          "X-Forwarded-Host",
          List.of("zq9.example\"><script>zq9()</script>"),
          "X-Forwarded-For",
          List.of("zq9, 127.0.0.1"),
          "X-HTTP-Method-Override",
          List.of("DELETE", "zq9"),
          "X-Easewright-Key",
          List.of("zq9"),
          "Accept-Encoding",
          List.of("gzip;q=zq9, zq9"));

  private final Random random;

  Hostile(Random random) {
    this.random = random;
  }

  <T> T one(List<T> all) {
    return all.get(random.nextInt(all.size()));
  }

  /** Whether something that happens once in so many times happens now. */
  boolean now(int oneIn) {
    return random.nextInt(oneIn) == 0;
  }

  String text() {
    return one(TEXTS);
  }

  String segment() {
    return one(SEGMENTS);
  }

  /** Sets one or two headers to what they should not be. */
  void spoil(Map<String, String> headers) {
    List<String> names = HEADERS.keySet().stream().sorted().toList();
    for (int more = random.nextInt(2); more >= 0; more--) {
      String name = one(names);
      headers.put(name, one(HEADERS.get(name)));
    }
  }

  /** Parameters for an address. */
  String query(List<String> names) {
    List<String> pairs = new ArrayList<>();
    for (int more = random.nextInt(3); more >= 0; more--) {
      String name = now(6) ? encoded("zq9<b>") : one(names);
      pairs.add(now(8) ? name : name + "=" + (now(3) ? segment() : encoded(shortened(text()))));
    }
    return "?" + String.join("&", pairs);
  }

  /** The longest line of a request that the server reads is 4 KB. */
  private static String shortened(String text) {
    return text.substring(0, Math.min(text.length(), 300));
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, UTF_8);
  }

  /** The fields of a form, some of them spoilt. */
  byte[] form(Map<String, List<String>> fields) {
    Map<String, List<String>> spoilt = new LinkedHashMap<>(fields);
    List<String> names = List.copyOf(fields.keySet());
    for (int more = random.nextInt(4); more >= 0; more--) {
      String name = now(6) ? text() : one(names);
      switch (random.nextInt(5)) {
        case 0 -> spoilt.remove(name);
        case 1 -> spoilt.put(name, List.of(text(), text()));
        case 2 -> spoilt.put(name, List.of(new String(json(JSON.createObjectNode()), UTF_8)));
        default -> spoilt.put(name, List.of(text()));
      }
    }
    byte[] body = encoded(spoilt);
    return now(8) ? bytesChanged(body) : body;
  }

  static byte[] encoded(Map<String, List<String>> fields) {
    List<String> pairs = new ArrayList<>();
    fields.forEach(
        (name, values) -> values.forEach(one -> pairs.add(encoded(name) + "=" + encoded(one))));
    return String.join("&", pairs).getBytes(ISO_8859_1);
  }

  /** A request with some of its parts made what they should not be. */
  byte[] json(JsonNode good) {
    JsonNode spoilt = good.deepCopy();
    for (int more = random.nextInt(3); more >= 0; more--) {
      spoilt = changed(spoilt);
    }
    byte[] text = bytes(spoilt);
    return switch (random.nextInt(10)) {
      case 0 -> bytesChanged(text);
      case 1 ->
          new String(text, UTF_8).replaceFirst("\\{", "{\"zq9\":1,\"zq9\":2,").getBytes(UTF_8);
      case 2 -> {
        byte[] twice = new String(text, UTF_8).replace("}", ",\"text\":\"zq9\"}").getBytes(UTF_8);
        yield now(2) ? twice : ("[".repeat(random.nextInt(4000)) + "zq9").getBytes(UTF_8);
      }
      default -> text;
    };
  }

  private static byte[] bytes(JsonNode json) {
    try {
      return JSON.writeValueAsBytes(json);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private JsonNode changed(JsonNode whole) {
    List<JsonNode> places = new ArrayList<>();
    gather(whole, places);
    if (places.isEmpty() || now(12)) {
      return value();
    }
    JsonNode place = one(places);
    if (place instanceof ObjectNode object) {
      List<String> names = new ArrayList<>();
      object.fieldNames().forEachRemaining(names::add);
      String name = names.isEmpty() || now(6) ? text() : one(names);
      if (now(5)) {
        object.remove(name);
      } else {
        object.set(name, value());
      }
    } else if (place instanceof ArrayNode array) {
      if (array.isEmpty() || now(3)) {
        array.add(value());
      } else {
        array.set(random.nextInt(array.size()), value());
      }
    }
    return whole;
  }

  private static void gather(JsonNode node, List<JsonNode> into) {
    if (node.isContainerNode()) {
      into.add(node);
      node.forEach(child -> gather(child, into));
    }
  }

  private JsonNode value() {
    JsonNodeFactory make = JsonNodeFactory.instance;
    return switch (random.nextInt(12)) {
      case 0 -> make.nullNode();
      case 1 -> make.booleanNode(random.nextBoolean());
      case 2 -> make.numberNode(new BigDecimal("1e400"));
      case 3 -> make.numberNode(one(List.of(-1L, 0L, 1L, 2147483648L, Long.MIN_VALUE)));
      case 4 -> make.numberNode(new BigDecimal("0." + "1".repeat(27)));
      case 5 -> make.arrayNode().add(text()).add(make.objectNode().put("zq9", text()));
      case 6 -> deep(random.nextInt(30));
      case 7 -> many();
      default -> make.textNode(text());
    };
  }

  private static JsonNode deep(int levels) {
    JsonNode node = JsonNodeFactory.instance.textNode(MARK);
    for (int level = 0; level < levels; level++) {
      node = JsonNodeFactory.instance.arrayNode().add(node);
    }
    return node;
  }

  private JsonNode many() {
    ArrayNode list = JsonNodeFactory.instance.arrayNode();
    for (int item = random.nextInt(2000); item >= 0; item--) {
      list.add(item);
    }
    return list;
  }

  /** Some bytes turned, lost or put in, so that it may be no text at all. */
  byte[] bytesChanged(byte[] good) {
    byte[] changed = good.clone();
    for (int more = random.nextInt(4); more >= 0 && changed.length > 0; more--) {
      changed[random.nextInt(changed.length)] = BYTES[random.nextInt(BYTES.length)];
    }
    return now(3) ? Arrays.copyOf(changed, random.nextInt(changed.length + 1)) : changed;
  }
}
