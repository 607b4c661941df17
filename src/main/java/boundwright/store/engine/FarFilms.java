package boundwright.store.engine;

import boundwright.clip.keep.KeptFilms;
import boundwright.store.backup.Elsewhere;
import java.io.IOException;
import java.util.Set;
import java.util.stream.Collectors;

/** Films in a bucket, for backups, checks and moves, which know files only. */
public final class FarFilms implements Elsewhere {
  private final KeptFilms films;

  /** @param films that are in a bucket */
  public FarFilms(KeptFilms films) {
    this.films = films;
  }

  @Override
  public void each(Taker taker) throws IOException {
    films.each(taker::take);
  }

  @Override
  public Set<String> clips() {
    return films.clipsHeld().stream().map(String::valueOf).collect(Collectors.toSet());
  }
}
