package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.quantity.RefusedException;
import boundwright.web.door.LocalName;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.DatagramPacket;
import java.net.InetAddress;
import java.net.MulticastSocket;
import java.net.NetworkInterface;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;

/** Asked with a datagram written by hand after RFC 6762, 6.7 (a one-shot question from another port is answered to that port). */
class LocalNameTest {
  @Test
  void aPhoneThatAsksForTheNameGetsTheAddress() throws IOException {
    String address = Network.address();
    try (LocalName name = LocalName.answer("boundwright-trial", List.of(address))) {
      Assumptions.assumeFalse(name.name().isEmpty(), "this network carries no multicast");
      assertThat(name.name()).isEqualTo("boundwright-trial.local");
      assertThat(ask("boundwright-trial", address)).hasValue(address);
      assertThat(ask("somebody-else", address)).isEmpty();
    }
  }

  private static Optional<String> ask(String name, String from) throws IOException {
    ByteArrayOutputStream question = new ByteArrayOutputStream();
    question.write(new byte[] {0, 7, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0});
    for (String label : new String[] {name, "local"}) {
      question.write(label.length());
      question.write(label.getBytes(StandardCharsets.US_ASCII));
    }
    question.write(new byte[] {0, 0, 1, 0, 1});
    byte[] wanted = InetAddress.getByName(from).getAddress();
    try (MulticastSocket socket = new MulticastSocket(0)) {
      socket.setNetworkInterface(NetworkInterface.getByInetAddress(InetAddress.getByName(from)));
      socket.setSoTimeout(1_500);
      socket.send(new DatagramPacket(question.toByteArray(), question.size(), InetAddress.getByName("224.0.0.251"), 5353));
      byte[] in = new byte[1500];
      DatagramPacket answer = new DatagramPacket(in, in.length);
      socket.receive(answer);
      byte[] said = Arrays.copyOf(in, answer.getLength());
      boolean found = new String(said, StandardCharsets.ISO_8859_1).contains(new String(wanted, StandardCharsets.ISO_8859_1));
      return found && said[7] > 0 ? Optional.of(from) : Optional.empty();
    } catch (SocketTimeoutException silence) {
      return Optional.empty();
    }
  }

  @Test
  void aNameThatNoNetworkTakesIsRefused() {
    assertThat(LocalName.checked("Runway.local")).isEqualTo("runway");
    for (String bad : List.of("", "-x", "two words", "ü", "x".repeat(64), "a.b")) {
      assertThatThrownBy(() -> LocalName.checked(bad)).as(bad).isInstanceOf(RefusedException.class).hasMessageContaining("letters, digits and hyphens");
    }
  }
}
