package easewright.request;

import java.util.Optional;

/**
 * A fault that prevents a request from being answered.
 *
 * @param pointer its location, a JSON Pointer (RFC 6901) into the request; "" for the whole request
 * @param problem one sentence: what is wrong
 * @param remedy one sentence: how to fix it
 * @param kind whether it cannot be parsed, or describes something impossible
 * @param line its line in the text, from 1, if lines are known
 */
public record Fault(
    String pointer, String problem, String remedy, Kind kind, Optional<Integer> line) {
  Fault(String pointer, String problem, String remedy, Kind kind) {
    this(pointer, problem, remedy, kind, Optional.empty());
  }

  /** Why a request is rejected; determines the status. */
  public enum Kind {
    /** Not in the contract's form or vocabulary: 400. */
    UNREADABLE,
    /** Well-formed, but describes something that cannot exist: 422. */
    IMPOSSIBLE
  }
}
