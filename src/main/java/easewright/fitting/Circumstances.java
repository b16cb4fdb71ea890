package easewright.fitting;

import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.Set;

/**
 * What else bears on comfort and safety.
 *
 * @param ids the circumstances that hold, as the rules name them: "nursing", "high-impact" …
 * @param monthsSinceOperation whole months since an operation on the chest; null when not said
 */
public record Circumstances(Set<String> ids, Integer monthsSinceOperation) {

  public Circumstances {
    ids = Collections.unmodifiableSet(new LinkedHashSet<>(ids));
  }
}
