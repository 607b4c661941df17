package boundwright.web.door;

import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.net.InetAddress;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.jmdns.JmDNS;
import javax.jmdns.impl.JmDNSImpl;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Answers phones that ask the network for {@code NAME.local} (multicast DNS, RFC 6762). Nothing else is announced. */
public final class LocalName implements AutoCloseable {
  /** What ends each of these names. */
  public static final String ENDING = ".local";

  private static final Logger LOG = LoggerFactory.getLogger(LocalName.class);
  private static final long PATIENCE_MS = 6_000;
  private static final long FAREWELL_MS = 1_500;

  private final List<JmDNS> answering;
  private final String name;

  private LocalName(List<JmDNS> answering, String name) {
    this.answering = answering;
    this.name = name;
  }

  /** The name as written on the command line, in small letters; refused if no network would take it. */
  public static String checked(String name) {
    String small = name.strip().toLowerCase(Locale.ROOT).replaceFirst("\\.local$", "");
    if (!small.matches("[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?")) {
      throw new RefusedException(
          "The name '" + name + "' is not one that a network takes: 1 to 63 letters, digits and hyphens, no hyphen at either end. For example --name runway.");
    }
    return small;
  }

  /** Begins to answer on these addresses. Where the network does not carry multicast, {@link #name} is empty. */
  public static LocalName answer(String name, List<String> addresses) {
    List<JmDNS> out = new ArrayList<>();
    String called = "";
    for (String address : addresses) {
      try {
        JmDNS one = JmDNS.create(InetAddress.getByName(address), name);
        out.add(one);
        boolean heard = !(one instanceof JmDNSImpl own) || own.waitForAnnounced(PATIENCE_MS);
        if (heard && called.isEmpty()) {
          // another machine may have the name already; then this one has got a number behind it
          called = one.getHostName().toLowerCase(Locale.ROOT).replaceFirst("\\.$", "");
        }
      } catch (IOException e) {
        LOG.debug("no multicast on {}", address, e);
      }
    }
    return new LocalName(out, called);
  }

  /** The name that is answered, for example {@code boundwright.local}; empty if none. */
  public String name() {
    return name;
  }

  /** Takes leave of the network; not waited for long. */
  @Override
  public void close() {
    Thread farewell =
        new Thread(
            () -> {
              for (JmDNS one : answering) {
                try {
                  one.close();
                } catch (IOException e) {
                  LOG.debug("left without a farewell", e);
                }
              }
            },
            "local-name-farewell");
    farewell.setDaemon(true);
    farewell.start();
    try {
      farewell.join(FAREWELL_MS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
