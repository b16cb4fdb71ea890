package easewright.request;

import java.util.Optional;

/**
 * One thing in a request that keeps it from being answered.
 *
 * @param pointer where, a JSON Pointer (RFC 6901) into the request; "" for the whole of it
 * @param problem one sentence: what is wrong
 * @param remedy one sentence: what would be right
 * @param kind whether it can't be read, or reads well but can't be
 * @param line the line of the text where that stands, from 1, where a text was read for its lines
 */
public record Fault(
    String pointer, String problem, String remedy, Kind kind, Optional<Integer> line) {
  Fault(String pointer, String problem, String remedy, Kind kind) {
    this(pointer, problem, remedy, kind, Optional.empty());
  }

  /** Why a request is refused; decides the status. */
  public enum Kind {
    /** Not in the form or the words of the contract: 400. */
    UNREADABLE,
    /** Every word is known, but together they describe nothing that can exist: 422. */
    IMPOSSIBLE
  }
}
