/** The shop's network: the office's page of it, the page where a device is paired, and the one that gives out the shop's certificate. */
export const networkWords = {
  'network.title': 'Network',
  'network.note':
    'With the network on, a tablet or computer at each machine shows its station. Only devices that you pair here can read or record anything.',
  'network.on': 'Switch the network on',
  'network.off': 'Switch the network off',
  'network.state.off': 'The network is off. Only this computer shows the shop.',
  'network.state.on': 'The network is on.',
  'network.state.no-pin': 'The network is off: it needs a PIN. Set one under “PIN and backups”.',
  'network.state.no-address':
    'The network is off: this computer has no address in a private network. Connect it to the shop’s network.',
  'network.state.failed': 'The network could not be switched on: {reason}. It is tried again every minute.',
  'network.told': 'Whether it is on was said when the program was started, and cannot be changed here.',
  'network.pin-first': 'Set one under “PIN and backups” first. Without one the network stays off.',
  'network.addresses': 'Addresses',
  'network.named': 'The name stays when the address changes. Pair devices by it where it opens.',
  'network.moved':
    'A device that was paired at an earlier address sends what it kept, and comes here, once it is told the new one: enter it there, or scan its picture.',
  'network.moved.show': 'Show pictures of the addresses',
  'network.moved.hide': 'Hide the pictures',
  'network.fingerprint': 'Fingerprint of the shop’s certificate',
  'network.fingerprint.note':
    'Each device must show the same letters and digits before you let it trust the certificate. If they differ, stop: something stands between.',
  'network.add': 'Add a device',
  'network.add.note':
    'First the device must trust the shop’s certificate: open the trust page on it and follow the steps. Then scan the pairing picture with its camera, or open the address and type the code.',
  'network.offer': 'Show the code for one device',
  'network.offer.until': 'Good for one device, until {time}.',
  'network.offer.trust': '1. Trust the shop',
  'network.offer.pair': '2. Pair the device',
  'network.offer.by-address':
    'If the name does not open on the device, as on many older Android devices, pair it by an address:',
  'network.offer.code': 'Code to type',
  'network.offer.no-trust':
    'The trust page could not be opened: another program uses its port. Devices that trust the shop already can be paired.',
  'network.symbol': 'Picture to scan: {address}',
  'network.devices': 'Devices',
  'network.devices.none': 'No device is paired yet.',
  'network.device': 'Device',
  'network.device.station': 'Station',
  'network.device.seen': 'Last seen',
  'network.device.here': 'this device',
  'network.device.revoke': 'Revoke',
  'network.device.sure': 'Revoke {name}? It shows and records nothing more until it is paired again.',
  'network.device.yes': 'Yes, revoke it',
  'network.device.no': 'Keep it',
  'network.keys.also': 'With the network’s keys and the paired devices',
  'network.keys.warning':
    'Whoever has this file can pretend to be this shop computer, and read and change all that is sent. Keep it locked away, on no disk that others use. With it another computer can take this one’s place, and no device has to be paired again.',
  'network.keys.export': 'Export everything, with the keys',
  'network.keys.restored':
    'The network’s keys and the paired devices were put in place too: devices that knew the other shop computer know this one.',
  'api.no-network-keys': 'There are no keys of the network yet: it was never switched on.',
  'office.page.network': 'Network',
  'api.not-paired': 'This device is not paired with the shop.',
  'api.network-shut': 'The shop’s network is off.',
  'api.only-here': 'This is done at the shop computer alone.',
  'api.pairing-wrong':
    'That is not what the office shows, or it is over: each code is good for one device and ten minutes. Have the office show a new one.',
  'api.pairing-unproved':
    'A device is paired only from a page over the shop’s certificate, once it trusts that.',
  'api.pairing-here': 'The shop computer itself needs no pairing.',
  'api.device-unknown': 'There is no such device. It may have been revoked already.',
  'api.devices-full': 'There are {most} devices already. Revoke one first.',
  'api.network-no-pin': 'The network needs a PIN: set one first.',
  'api.network-told': 'Whether the network is on was said when the program was started.',
  'api.network-off': 'Switch the network on first.',
  'pairing.title': 'Pair this device with the shop',
  'pairing.code': 'Code that the office shows',
  'pairing.scanned': 'The code was scanned.',
  'pairing.name': 'Name of this device',
  'pairing.name.note': 'Such as: tablet at the table saw',
  'pairing.station': 'Where does it stand?',
  'pairing.pair': 'Pair this device',
  'pairing.done': 'Paired: {name}.',
  'pairing.already': 'This device is paired already: {name}.',
  'pairing.go': 'Go to the station',
  'pairing.here': 'This is the shop computer itself. It needs no pairing.',
  'pairing.away': 'The shop computer does not answer. Is this device in the shop’s network?',
  'untrusted.title': 'This device does not trust the shop’s certificate',
  'untrusted.why':
    'The page was opened through a warning. Somebody between this device and the shop computer could read and change everything, so nothing is shown or recorded here.',
  'untrusted.what':
    'Open the trust page whose address the office shows under Network, follow its steps, close the browser and open this address again.',
  'untrusted.other':
    'Is it a private window, or a browser that keeps nothing? Then use an ordinary window: the station must keep marks while the shop computer is away.',
  'trust.title': 'Trust this shop',
  'trust.what':
    'A device must trust the shop’s certificate before it can show a station. The certificate stands for this shop’s computers alone: addresses in private networks and names that end in .local. It stands for no bank, no store and no other site.',
  'trust.compare': 'Compare first',
  'trust.compare.how':
    'Anybody in the network could show a page like this one. Go to the office and compare. Go on only if every letter and digit is the same.',
  'trust.save': 'Save the certificate',
  'trust.save.crt': 'Certificate (Android, Windows, macOS, Linux)',
  'trust.save.profile': 'Profile (iPhone, iPad)',
  'trust.not-tried': 'These steps were not tried by us. Menus differ from one version to the next.',
  'trust.tried':
    'Tried with Chromium on Linux, where the command certutil put the certificate in. The menus below were not tried.',
  'trust.android': 'Android',
  'trust.android.1': 'Save the certificate above.',
  'trust.android.2':
    'Open Settings, then Security and privacy, then More security settings, then Encryption and credentials, then Install a certificate, then CA certificate.',
  'trust.android.3': 'Read the warning, choose Install anyway, and pick the file that was saved.',
  'trust.ios': 'iPhone, iPad',
  'trust.ios.1': 'Save the profile above with Safari and choose Allow.',
  'trust.ios.2': 'Open Settings: Profile Downloaded stands at the top. Open it and choose Install.',
  'trust.ios.3':
    'Open Settings, then General, then About, then Certificate Trust Settings, and switch the shop’s certificate on.',
  'trust.windows': 'Windows',
  'trust.windows.1': 'Save the certificate above and open the file.',
  'trust.windows.2':
    'Choose Install Certificate, then Current User, then Place all certificates in the following store.',
  'trust.windows.3':
    'Choose Trusted Root Certification Authorities, finish, compare the thumbprint and answer Yes.',
  'trust.mac': 'macOS',
  'trust.mac.1': 'Save the certificate above and open the file: Keychain Access takes it.',
  'trust.mac.2': 'Open the certificate in the list of Keychain Access, then open Trust.',
  'trust.mac.3': 'For Secure Sockets Layer choose Always Trust, close the window and give your password.',
  'trust.linux': 'Linux',
  'trust.linux.1': 'Save the certificate above.',
  'trust.linux.2':
    'Chromium: open chrome://certificate-manager, then Installed by you, then Trusted Certificates, then Import. Firefox: open Settings, then Privacy and Security, then View Certificates, then Authorities, then Import.',
  'trust.linux.3': 'Pick the file that was saved, and trust it for websites.',
  'trust.then': 'Then',
  'trust.then.what': 'Close the browser, open it again, and scan the pairing picture in the office.',
  'trust.remove': 'To trust the shop no more, remove the certificate at the same place.',
} as const;
