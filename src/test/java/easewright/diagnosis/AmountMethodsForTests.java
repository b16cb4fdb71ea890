package easewright.diagnosis;

/** Lets tests of the rule book ask what the computing knows. */
public final class AmountMethodsForTests {
  private AmountMethodsForTests() {}

  public static boolean known(String method) {
    return method != null && AmountMethods.ALL.contains(method);
  }

  public static boolean stage(String stage) {
    return Advice.STAGES.contains(stage);
  }
}
