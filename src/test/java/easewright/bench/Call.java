package easewright.bench;

import java.util.HashMap;
import java.util.Map;
import java.util.function.BiPredicate;

/**
 * One request of a load.
 *
 * @param path with the query, as "/v1/fittings?length=short"
 * @param body none if empty
 * @param right whether status and body are as they should be; asked of every answer
 */
public record Call(
    String method,
    String path,
    Map<String, String> headers,
    byte[] body,
    BiPredicate<Integer, byte[]> right) {

  /** A POST of JSON whose answer is not looked at. */
  public static Call post(String path, byte[] json) {
    return post(path, json, (status, body) -> true);
  }

  /** A POST of JSON. */
  public static Call post(String path, byte[] json, BiPredicate<Integer, byte[]> right) {
    return new Call("POST", path, Map.of("Content-Type", "application/json"), json, right);
  }

  /** A GET. */
  public static Call get(String path, BiPredicate<Integer, byte[]> right) {
    return new Call("GET", path, Map.of(), new byte[0], right);
  }

  /** The same with one more header. */
  public Call with(String header, String value) {
    Map<String, String> more = new HashMap<>(headers);
    more.put(header, value);
    return new Call(method, path, more, body, right);
  }
}
