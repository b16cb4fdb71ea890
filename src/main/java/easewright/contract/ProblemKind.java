package easewright.contract;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.util.List;

/**
 * Explanation of a problem type, to which its type URI should resolve (RFC 9457, section 3.1.1).
 *
 * @param kind last part of the type
 * @param title as in the problem
 * @param status usual HTTP status
 * @param means what has happened
 * @param remedy what to do, a sentence or two each
 */
public record ProblemKind(
    String kind, String title, int status, String means, List<String> remedy) {

  /** Every kind, from {@code problems.yaml}. */
  public static List<ProblemKind> all() {
    try {
      return new YAMLMapper()
          .readValue(BundledText.text("problems.yaml"), new TypeReference<>() {});
    } catch (JsonProcessingException broken) {
      throw new IllegalStateException("problems.yaml is not as it should be.", broken);
    }
  }
}
