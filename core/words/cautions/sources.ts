/** Where cautions are from: title, publisher, year, and on what terms it may be used. */
export const cautionSources = {
  'office.source.osha-3157':
    'A Guide for Protecting Workers from Woodworking Hazards, OSHA 3157. U.S. Department of Labor, Occupational Safety and Health Administration, 1999. Public domain.',
  'office.source.osha-etool':
    'Woodworking eTool, as published online. U.S. Department of Labor, Occupational Safety and Health Administration. Public domain.',
  'office.source.osha-1910-213':
    '29 CFR 1910.213, Woodworking machinery requirements. U.S. Department of Labor, Occupational Safety and Health Administration. Public domain.',
  'office.source.osha-1910-107':
    '29 CFR 1910.107, Spray finishing using flammable and combustible materials. U.S. Department of Labor, Occupational Safety and Health Administration. Public domain.',
  'office.source.hse-l114':
    'Safe use of woodworking machinery, Approved Code of Practice and guidance, L114, second edition. Health and Safety Executive, 2014. Open Government Licence.',
  'office.source.hse-wis-16':
    'Circular saw benches: Safe working practices, Information Sheet 16 (revision 2). Health and Safety Executive. Open Government Licence.',
  'office.source.hse-wis-17':
    'Hand-fed surface planing machines: Safe working practices, Information Sheet 17 (revision 2). Health and Safety Executive. Open Government Licence.',
  'office.source.hse-wis-18':
    'Safe use of vertical spindle moulding machines, Woodworking Information Sheet 18 (revised). Health and Safety Executive. Open Government Licence.',
  'office.source.hse-wis-23':
    'Wood dust: Controlling the risks, Information Sheet 23 (revision 3). Health and Safety Executive. Open Government Licence.',
  'office.source.hse-wis-31':
    'Narrow band saws: Safe working practices, Information Sheet 31 (revision 1). Health and Safety Executive. Open Government Licence.',
  'office.source.blade-widths':
    'Tables of blade widths and the least radius that each goes round, as blades and band saws are sold with them: from memory; they differ by a little. Your saw’s own comes first.',
  'office.source.common-practice': 'Common practice in the trade; no published source.',
} as const;
