package easewright.clinic;

/**
 * The store is unavailable, for a reason outside the request that can pass: a full disk, a damaged
 * file, a server restart. The work was rolled back. The fault is reported once, to {@link
 * StoreNews}, not with every request that meets it.
 */
public final class StoreAway extends RuntimeException {
  private static final long serialVersionUID = 1;

  private final transient StoreCondition condition;

  StoreAway(StoreCondition condition) {
    super(condition.fault(), null, false, false);
    this.condition = condition;
  }

  StoreCondition condition() {
    return condition;
  }
}
