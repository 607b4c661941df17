package boundwright.web;

import boundwright.pairing.PhoneRights;
import java.net.Inet4Address;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.util.Optional;
import org.junit.jupiter.api.Assumptions;

/** This machine as the network sees it. */
final class Network {
  private Network() {}

  /** An address of this machine that is not the loopback; a machine without a network skips the test and says so. */
  static String address() {
    try {
      Optional<String> found =
          NetworkInterface.networkInterfaces()
              .flatMap(NetworkInterface::inetAddresses)
              .filter(a -> a instanceof Inet4Address && !a.isLoopbackAddress() && !a.isLinkLocalAddress())
              .map(a -> a.getHostAddress())
              .findFirst();
      Assumptions.assumeTrue(found.isPresent(), "this machine is on no network");
      return found.orElseThrow();
    } catch (SocketException e) {
      throw new AssertionError(e);
    }
  }

  /** A browser that comes from the network, as a phone does. */
  static Client phone(int port) {
    return new Client("http://" + address() + ":" + port);
  }

  /** The same, paired to log and no more. */
  static Client phoneThatMayLog(WebServer server) {
    Client phone = phone(server.port());
    String code = server.pairing().offer(PhoneRights.LOG).text();
    phone.post("/pair/" + code, "csrf", Client.hidden(phone.get("/pair/" + code).body(), "csrf"), "name", "Otis's phone");
    return phone;
  }
}
