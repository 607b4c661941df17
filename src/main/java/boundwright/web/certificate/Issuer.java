package boundwright.web.certificate;

import java.math.BigInteger;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.SecureRandom;
import java.security.cert.X509Certificate;
import java.security.spec.ECGenParameterSpec;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Date;
import java.util.List;
import org.bouncycastle.asn1.DEROctetString;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x509.BasicConstraints;
import org.bouncycastle.asn1.x509.ExtendedKeyUsage;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.asn1.x509.GeneralName;
import org.bouncycastle.asn1.x509.GeneralNames;
import org.bouncycastle.asn1.x509.GeneralSubtree;
import org.bouncycastle.asn1.x509.KeyPurposeId;
import org.bouncycastle.asn1.x509.KeyUsage;
import org.bouncycastle.asn1.x509.NameConstraints;
import org.bouncycastle.cert.CertIOException;
import org.bouncycastle.cert.X509v3CertificateBuilder;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509ExtensionUtils;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;

/**
 * Writes certificates (RFC 5280). The one class that knows the library for them; it is loaded only when one is to be written. Keys are
 * of the curve P-256, which phones and the Java library know.
 */
final class Issuer {
  private static final String SIGNATURE = "SHA256withECDSA";

  private final SecureRandom random = new SecureRandom();

  /**
   * An authority that can vouch for these names and addresses and for nothing else: even whoever stole its key could not pass for a bank
   * before a phone that trusts it. A permitted DNS name also permits names below it (RFC 5280, 4.2.1.10); nothing narrower exists.
   */
  KeyFolder.Pair authority(List<String> names, List<String> addresses, Instant from, Instant until) {
    try {
      KeyPair keys = keys();
      X500Name subject = new X500Name("CN=boundwright on this laptop");
      X509v3CertificateBuilder builder =
          new JcaX509v3CertificateBuilder(subject, serial(), Date.from(from), Date.from(until), subject, keys.getPublic());
      builder.addExtension(Extension.basicConstraints, true, new BasicConstraints(0));
      builder.addExtension(Extension.keyUsage, true, new KeyUsage(KeyUsage.keyCertSign));
      builder.addExtension(Extension.extendedKeyUsage, false, new ExtendedKeyUsage(KeyPurposeId.id_kp_serverAuth));
      builder.addExtension(Extension.subjectKeyIdentifier, false, new JcaX509ExtensionUtils().createSubjectKeyIdentifier(keys.getPublic()));
      builder.addExtension(Extension.nameConstraints, true, constraints(names, addresses));
      return signed(builder, keys, keys);
    } catch (CertIOException | GeneralSecurityException | OperatorCreationException | UnknownHostException e) {
      throw new IllegalStateException(e);
    }
  }

  /** A leaf for serving, signed by this authority. */
  KeyFolder.Pair leaf(KeyFolder.Pair authority, List<String> names, List<String> addresses, Instant from, Instant until) {
    try {
      KeyPair keys = keys();
      X509v3CertificateBuilder builder =
          new JcaX509v3CertificateBuilder(
              authority.certificate(), serial(), Date.from(from), Date.from(until), new javax.security.auth.x500.X500Principal("CN=boundwright"), keys.getPublic());
      builder.addExtension(Extension.basicConstraints, true, new BasicConstraints(false));
      builder.addExtension(Extension.keyUsage, true, new KeyUsage(KeyUsage.digitalSignature));
      builder.addExtension(Extension.extendedKeyUsage, false, new ExtendedKeyUsage(KeyPurposeId.id_kp_serverAuth));
      builder.addExtension(
          Extension.authorityKeyIdentifier, false, new JcaX509ExtensionUtils().createAuthorityKeyIdentifier(authority.certificate()));
      List<GeneralName> all = new ArrayList<>();
      names.forEach(n -> all.add(new GeneralName(GeneralName.dNSName, n)));
      addresses.forEach(a -> all.add(new GeneralName(GeneralName.iPAddress, a)));
      builder.addExtension(Extension.subjectAlternativeName, false, new GeneralNames(all.toArray(GeneralName[]::new)));
      return signed(builder, keys, new KeyPair(authority.certificate().getPublicKey(), authority.key()));
    } catch (CertIOException | GeneralSecurityException | OperatorCreationException e) {
      throw new IllegalStateException(e);
    }
  }

  /** A kind of name that nothing is permitted of is shut off whole: what a constraint does not speak of, it permits. */
  private static NameConstraints constraints(List<String> names, List<String> addresses) throws UnknownHostException {
    List<GeneralSubtree> permitted = new ArrayList<>();
    for (String name : names) {
      permitted.add(new GeneralSubtree(new GeneralName(GeneralName.dNSName, name)));
    }
    for (String address : addresses) {
      byte[] bytes = InetAddress.getByName(address).getAddress();
      byte[] range = Arrays.copyOf(bytes, bytes.length * 2);
      Arrays.fill(range, bytes.length, range.length, (byte) 0xff);
      permitted.add(new GeneralSubtree(new GeneralName(GeneralName.iPAddress, new DEROctetString(range))));
    }
    List<GeneralSubtree> excluded = new ArrayList<>();
    if (addresses.isEmpty()) {
      excluded.add(new GeneralSubtree(new GeneralName(GeneralName.iPAddress, new DEROctetString(new byte[8]))));
      excluded.add(new GeneralSubtree(new GeneralName(GeneralName.iPAddress, new DEROctetString(new byte[32]))));
    }
    if (names.isEmpty()) {
      excluded.add(new GeneralSubtree(new GeneralName(GeneralName.dNSName, "")));
    }
    return new NameConstraints(
        permitted.toArray(GeneralSubtree[]::new), excluded.isEmpty() ? null : excluded.toArray(GeneralSubtree[]::new));
  }

  private KeyPair keys() throws GeneralSecurityException {
    KeyPairGenerator generator = KeyPairGenerator.getInstance("EC");
    generator.initialize(new ECGenParameterSpec("secp256r1"), random);
    return generator.generateKeyPair();
  }

  private BigInteger serial() {
    return new BigInteger(120, random).setBit(120);
  }

  private static KeyFolder.Pair signed(X509v3CertificateBuilder builder, KeyPair of, KeyPair by)
      throws OperatorCreationException, GeneralSecurityException {
    X509Certificate certificate =
        new JcaX509CertificateConverter().getCertificate(builder.build(new JcaContentSignerBuilder(SIGNATURE).build(by.getPrivate())));
    return new KeyFolder.Pair(of.getPrivate(), certificate);
  }
}
