package boundwright.web.files;

import boundwright.quantity.RefusedException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/** Files that were read and shown, and wait for the coach's word; the newest few. */
public final class WaitingFiles {
  private static final int MOST = 3;

  private final Map<String, WaitingFile> waiting = new LinkedHashMap<>();
  private final Supplier<String> tokens;

  /** {@code tokens} gives names that nobody can guess. */
  public WaitingFiles(Supplier<String> tokens) {
    this.tokens = tokens;
  }

  /** A file by its name and bytes. */
  @SuppressWarnings("ArrayRecordComponent") // held, never compared nor changed
  record WaitingFile(String name, byte[] bytes) {}

  synchronized String keep(WaitingFile file) {
    String token = tokens.get();
    waiting.put(token, file);
    while (waiting.size() > MOST) {
      waiting.remove(waiting.keySet().iterator().next());
    }
    return token;
  }

  synchronized Optional<WaitingFile> find(String token) {
    return Optional.ofNullable(waiting.get(token));
  }

  synchronized WaitingFile get(String token) {
    return find(token).orElseThrow(() -> new RefusedException("The file is no longer at hand, so nothing was taken. Choose it again."));
  }

  synchronized void drop(String token) {
    waiting.remove(token);
  }
}
