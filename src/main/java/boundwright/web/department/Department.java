package boundwright.web.department;

import boundwright.account.Bonds;
import boundwright.account.Identity;
import boundwright.account.Visit;
import boundwright.quantity.RefusedException;
import boundwright.web.page.Turned;
import com.nimbusds.jose.JOSEException;
import com.nimbusds.jose.proc.BadJOSEException;
import com.nimbusds.oauth2.sdk.GeneralException;
import java.io.IOException;
import java.net.URI;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.Semaphore;
import java.util.concurrent.locks.ReentrantLock;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The department whose logins are taken here, or none. Its server is asked to describe itself when somebody wants to log in there and once an
 * hour; while it cannot be reached the pages say so, and nobody waits in line for it.
 */
public final class Department {
  /** How long its description of itself is taken for true. */
  static final Duration DESCRIBED = Duration.ofHours(1);
  /** How long it is left alone after it did not answer. */
  static final Duration LEFT_ALONE = Duration.ofSeconds(10);
  /** Requests that wait for its answers at the same time; each holds a thread of the pages. */
  private static final int AT_ONCE = 8;

  private static final Logger LOG = LoggerFactory.getLogger(Department.class);

  private final @Nullable DepartmentSetting setting;
  private final Clock clock;
  private final ReentrantLock looking = new ReentrantLock();
  private final Semaphore waiting = new Semaphore(AT_ONCE);
  private volatile @Nullable Provider provider;
  private volatile Instant looked = Instant.MIN;
  private volatile String trouble = "";

  /** @param setting how it is known; null for none */
  public Department(@Nullable DepartmentSetting setting, Clock clock) {
    this.setting = setting;
    this.clock = clock;
  }

  /** Whether there is one. */
  public boolean isThere() {
    return setting != null;
  }

  private DepartmentSetting known() {
    return Objects.requireNonNull(setting);
  }

  /** What it is called; empty for none. */
  public String name() {
    return setting == null ? "" : setting.name();
  }

  /** Its server; empty for none. */
  public String issuer() {
    return setting == null ? "" : setting.issuer().toString();
  }

  /** Whether nobody comes in by a password or a passkey. */
  public boolean only() {
    return setting != null && setting.only();
  }

  /** Turns away whoever wants to come in by, or set, a password or a passkey where that is not wanted. */
  public void turnAwayFromOwnLogins() {
    if (only()) {
      throw new Turned(403, "Here everybody logs in at " + name() + ". Passwords and passkeys are not taken.");
    }
  }

  /** Why nobody can log in there, as it was found last; empty for nothing. */
  public String trouble() {
    return trouble;
  }

  /** Asks the server to describe itself, so that {@link #trouble} is of now. */
  public void look() {
    try {
      provider();
    } catch (RefusedException e) {
      LOG.debug("the department cannot be asked", e);
    }
  }

  private Provider provider() {
    Provider held = provider;
    Instant now = clock.instant();
    Duration since = looked.equals(Instant.MIN) ? DESCRIBED : Duration.between(looked, now).abs();
    if (held != null && since.compareTo(DESCRIBED) < 0) {
      return held;
    }
    if (!trouble.isEmpty() && since.compareTo(LEFT_ALONE) < 0) {
      throw new RefusedException(trouble);
    }
    if (!looking.tryLock()) {
      throw new RefusedException(name() + " is being asked just now. Try again in a few seconds.");
    }
    try {
      looked = now;
      Provider found = ask();
      provider = found;
      trouble = "";
      return found;
    } catch (RefusedException e) {
      provider = null;
      trouble = String.valueOf(e.getMessage());
      throw e;
    } finally {
      looking.unlock();
    }
  }

  private Provider ask() {
    DepartmentSetting s = known();
    if (!s.trouble().isEmpty()) {
      throw new RefusedException(s.name() + " is not set up right here: " + s.trouble());
    }
    try {
      return Provider.ask(s);
    } catch (IOException e) {
      throw unreachable(e);
    } catch (GeneralException | IllegalArgumentException e) {
      LOG.warn("{}: {}", s, oneLine(e));
      throw new RefusedException(s.name() + " is not set up right: what " + s.issuer() + " says of itself is not what is asked of it here.", e);
    }
  }

  private RefusedException unreachable(Exception e) {
    LOG.warn("{}: {}", known(), oneLine(e));
    return new RefusedException(name() + " cannot be reached just now.", e);
  }

  /** What a library or a server said, for the lines of the program: never more than one line. */
  private static String oneLine(Exception e) {
    String said = String.valueOf(e.getMessage()).replaceAll("[^\\x20-\\x7e]", " ");
    return said.substring(0, Math.min(300, said.length()));
  }

  /** Asks the server to describe itself if that is due; refuses in a sentence if nobody can be sent there. */
  public void beReady() {
    provider();
  }

  /**
   * Where a browser is sent.
   *
   * @param callback where it comes back to
   */
  public URI address(Bonds.Going going, URI callback) {
    return provider().address(going, callback);
  }

  /**
   * Who is back.
   *
   * @param brought what stands in the address with which they came
   * @throws RefusedException if they were not let in there, or what was said of them does not hold; says which
   */
  public Identity identity(Visit visit, Map<String, List<String>> brought, URI callback) {
    Provider asked = provider();
    if (!waiting.tryAcquire()) {
      throw new RefusedException(name() + " is slow just now. Wait a little and begin again.");
    }
    try {
      return asked.identity(visit, brought, callback);
    } catch (Provider.SaidNo e) {
      throw new RefusedException(
          String.valueOf(e.getMessage()).equals("access_denied")
              ? name() + " did not say who you are, because you or it refused. Nobody was logged in."
              : name() + " could not log you in. Try again; if it happens again, ask whoever looks after it there.",
          e);
    } catch (IOException | JOSEException e) {
      // JOSEException: its keys cannot be had
      throw unreachable(e);
    } catch (BadJOSEException e) {
      LOG.warn("{}: {}", known(), oneLine(e));
      throw new RefusedException(
          "What came from " + name() + " does not hold: not signed by it, meant for somebody else, or out of date. Nobody was logged in. Begin again on the page Log in.", e);
    } catch (GeneralException | IllegalArgumentException e) {
      LOG.warn("{}: {}", known(), oneLine(e));
      throw new RefusedException("What came back is no answer of " + name() + " that can be taken. Nobody was logged in. Begin again on the page Log in.", e);
    } finally {
      waiting.release();
    }
  }
}
