package easewright.clinic;

/**
 * The store can't be used now, for a reason that lies outside the request and can pass: a full
 * disk, a damaged file, a server that restarts. Nothing of the work was kept. What is wrong is told
 * once, to {@link StoreNews}, not with every request that meets it.
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
