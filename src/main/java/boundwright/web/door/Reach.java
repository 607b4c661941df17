package boundwright.web.door;

import boundwright.quantity.RefusedException;
import jakarta.servlet.http.HttpServletRequest;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.net.UnknownHostException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** By which addresses and names the pages can be reached, and which of them are ours. */
public final class Reach {
  /** The host that stands for every address of the machine. */
  public static final String ALL = "all";

  private static final Set<String> ANY = Set.of(ALL, "0.0.0.0", "::", "[::]");
  private static final Set<String> THIS_MACHINE = Set.of("localhost", "127.0.0.1", "::1");
  private static final Set<String> LOOPBACK = Set.of("localhost", "127.0.0.1", "[::1]");
  private static final Pattern PORT = Pattern.compile(":(\\d{1,5})$");
  /** Networks inside the machine, for other programs on it; no phone is there. */
  private static final Pattern INSIDE = Pattern.compile("(docker|veth|br-|virbr|vmnet|vboxnet|utun|tun|tap|zt|wg).*");

  private final String host;
  private final boolean any;
  private final boolean https;
  private final List<String> addresses;
  private final List<String> names = new CopyOnWriteArrayList<>();
  private volatile String behind = "";
  private volatile int port;
  private volatile int sealedPort;

  private Reach(String host, boolean any, boolean https, List<String> addresses) {
    this.host = host;
    this.any = any;
    this.https = https;
    this.addresses = List.copyOf(addresses);
  }

  /**
   * The reach of a server that listens on {@code host}.
   *
   * @param host an address of this machine, or {@link #ALL}
   * @param https whether the network is answered over https
   */
  public static Reach of(String host, boolean https) {
    return of(host, https, machine());
  }

  static Reach of(String host, boolean https, List<String> machine) {
    String asked = host.strip().toLowerCase(Locale.ROOT);
    if (ANY.contains(asked)) {
      return new Reach(asked, true, https, machine);
    }
    if (THIS_MACHINE.contains(asked)) {
      return new Reach(asked, false, https, List.of());
    }
    String address = numbers(asked, machine);
    return new Reach(address, false, https, isLoopback(address) ? List.of() : List.of(address));
  }

  /** A name of this machine in numbers, because a certificate and the check of Host need exactly what phones write. */
  private static String numbers(String host, List<String> machine) {
    try {
      return InetAddress.getByName(host).getHostAddress();
    } catch (UnknownHostException e) {
      throw new RefusedException(
          "The address '" + host + "' is not known here, so no page was opened on it. "
              + (machine.isEmpty() ? "This machine is on no network: join the Wi-Fi first." : "This machine has " + String.join(", ", machine) + ".")
              + " --host all takes every one.",
          e);
    }
  }

  private static boolean isLoopback(String address) {
    try {
      return InetAddress.getByName(address).isLoopbackAddress();
    } catch (UnknownHostException e) {
      return false;
    }
  }

  /** Addresses of this machine that a phone can use, those of real networks first; version 6 only if there is no other. */
  private static List<String> machine() {
    try {
      List<NetworkInterface> up = new ArrayList<>();
      for (NetworkInterface n : NetworkInterface.networkInterfaces().toList()) {
        if (n.isUp() && !n.isLoopback()) {
          up.add(n);
        }
      }
      up.sort(Comparator.comparing(n -> INSIDE.matcher(n.getName()).matches()));
      Set<String> four = new LinkedHashSet<>();
      Set<String> six = new LinkedHashSet<>();
      for (NetworkInterface n : up) {
        n.inetAddresses().filter(a -> !a.isLinkLocalAddress() && !a.isLoopbackAddress())
            .forEach(a -> (a instanceof Inet4Address ? four : six).add(a.getHostAddress().replaceFirst("%.*", "")));
      }
      return List.copyOf(four.isEmpty() ? six : four);
    } catch (SocketException e) {
      throw new RefusedException("The networks of this machine could not be listed: " + e.getMessage() + ". Leave out --host to open the pages here only.", e);
    }
  }

  /** Tells the ports once they are known; {@code sealedPort} is 0 without https. */
  public void opened(int port, int sealedPort) {
    this.port = port;
    this.sealedPort = sealedPort;
  }

  /** Another name that this machine answers to on the network, for example {@code boundwright.local}. */
  public void alsoCalled(String name) {
    if (!names.contains(name)) {
      names.add(name);
    }
  }

  /** What to listen on: one address each; empty text for every address. */
  public List<String> listen() {
    return any ? List.of("") : addresses.isEmpty() ? List.of(host) : List.of("127.0.0.1", host);
  }

  /** What to listen on for phones: as {@link #listen()} without the machine itself. */
  public List<String> listenSealed() {
    return any ? List.of("") : addresses;
  }

  /** Whether phones can come at all: the coach asked for it. */
  public boolean forPhones() {
    return any || !addresses.isEmpty();
  }

  /** Whether anybody but the machine itself can reach the pages. */
  public boolean forOthers() {
    return forPhones() || !behind.isEmpty();
  }

  /**
   * Says that a proxy which speaks https stands before this server.
   *
   * @param address what browsers open, {@code https://NAME} or {@code https://NAME:PORT}; empty for no proxy
   */
  public Reach behind(String address) {
    String tidy = address.strip().toLowerCase(Locale.ROOT).replaceFirst("/$", "");
    if (!tidy.isEmpty() && !tidy.matches("https://[a-z0-9]([a-z0-9.-]{0,250}[a-z0-9])?(:\\d{1,5})?")) {
      throw new RefusedException(
          "The address '" + address.strip() + "' of the proxy is none that a browser opens over https. Write it as https://NAME, without a path; passwords are not taken over plain http.");
    }
    behind = tidy.replaceFirst("https://", "");
    return this;
  }

  /** Whether nobody on the way could read this request. */
  public boolean isSealed(HttpServletRequest request) {
    return request.isSecure() || isBehind(request.getHeader("Host"));
  }

  private boolean isBehind(@Nullable String host) {
    return host != null && !behind.isEmpty() && host.equalsIgnoreCase(behind);
  }

  /** Whether phones are answered over https. */
  public boolean https() {
    return https && forPhones();
  }

  /** The addresses for phones, likeliest first; empty on no network. */
  public List<String> addresses() {
    return addresses;
  }

  /** The names for phones. */
  public List<String> names() {
    return List.copyOf(names);
  }

  /** Where the machine itself opens the pages. */
  public String own() {
    return "http://" + bracketed(any || !addresses.isEmpty() ? "127.0.0.1" : host) + ":" + port;
  }

  /** Where phones open the pages, likeliest first. */
  public List<String> urls() {
    if (!behind.isEmpty()) {
      return List.of("https://" + behind);
    }
    List<String> out = new ArrayList<>();
    addresses.forEach(a -> out.add(url(a)));
    names.forEach(n -> out.add(url(n)));
    return out;
  }

  /**
   * Where browsers open the pages over https, always the same for the same network, with a name rather than a number; empty if nothing is
   * answered over https.
   */
  public String outside() {
    List<String> urls = urls();
    int first = behind.isEmpty() && !names.isEmpty() ? addresses.size() : 0;
    return urls.isEmpty() || !urls.get(0).startsWith("https") ? "" : urls.get(first);
  }

  private String url(String at) {
    return (https() ? "https://" : "http://") + bracketed(at) + ":" + (https() ? sealedPort : port);
  }

  /** Where phones learn to trust the certificate: in the open, since they do not trust it yet. Empty on no network. */
  public String trustUrl() {
    return addresses.isEmpty() ? "" : "http://" + bracketed(addresses.get(0)) + ":" + port + "/trust";
  }

  /** Whether this Host means the machine itself; any port, since a tunnel of the coach's own may use another. */
  public static boolean isLoopbackHost(String header) {
    return LOOPBACK.contains(PORT.matcher(header.toLowerCase(Locale.ROOT)).replaceFirst(""));
  }

  /**
   * Whether this Host is one of those that were told to the coach.
   *
   * @param header as the browser sent it, with the port
   * @param sealed whether it came over https
   */
  public boolean isOurs(String header, boolean sealed) {
    String asked = header.toLowerCase(Locale.ROOT);
    int at = sealed ? sealedPort : port;
    return isBehind(header) || List.of(addresses, names).stream().flatMap(List::stream).anyMatch(a -> asked.equals(bracketed(a) + ":" + at));
  }

  private static String bracketed(String address) {
    return address.contains(":") ? "[" + address + "]" : address;
  }
}
