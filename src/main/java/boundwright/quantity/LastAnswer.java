package boundwright.quantity;

import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Keeps what was worked out last: the same question, asked again, is not worked out again. Kept in memory only. Safe for many threads.
 *
 * @param <Q> the question with all that its answer depends on; two that are equal have one answer
 * @param <A> the answer, never changed once it is made
 */
public final class LastAnswer<Q, A> {
  private final AtomicReference<@Nullable Kept<Q, A>> last = new AtomicReference<>();

  private record Kept<Q, A>(Q question, A answer) {}

  /** The answer to this question, worked out unless it was the last one asked. */
  public A to(Q question, Function<Q, A> work) {
    Kept<Q, A> there = last.get();
    if (there != null && there.question.equals(question)) {
      return there.answer;
    }
    A made = work.apply(question);
    last.set(new Kept<>(question, made));
    return made;
  }
}
