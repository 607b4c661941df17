package boundwright.runway;

/**
 * An advice told apart as an object: whoever keeps it hands the same one out again, and a record's own equality goes through every figure.
 * Advice that is equal and another object costs working out once more.
 */
final class SameAdvice {
  private final MarkAdvice advice;

  SameAdvice(MarkAdvice advice) {
    this.advice = advice;
  }

  @Override
  @SuppressWarnings("ReferenceEquality") // one object is meant
  public boolean equals(Object other) {
    return other instanceof SameAdvice same && same.advice == advice;
  }

  @Override
  public int hashCode() {
    return System.identityHashCode(advice);
  }
}
