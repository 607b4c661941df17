package boundwright.season.conflict;

import java.util.List;

/** Says whether things can hold together. */
public interface Check<T> {
  /** Of these alone. */
  Answer of(List<T> demands);
}
