import type { CoveringRow } from '../core/sensory/covering';

/**
 * Layerings of four and five that bring every pair of 6 to 20 vials together, in as few layerings as are known.
 * Found by greedy choice and annealing; every row is checked pair by pair in its test. `proven`: no smaller one exists
 * (the Schönheim bound is met, or an integer program closed the gap); otherwise the size is that of the best published
 * covering (Gordon, Kuperberg & Patashnik, J. Combin. Designs 3 (1995) 269, and the La Jolla Covering Repository).
 * A letter is a vial, a the first; unit: none.
 */
export const coverings: readonly CoveringRow[] = [
  {
    vials: 6,
    size: 4,
    proven: true,
    layerings: 'abce abdf cdef',
  },
  {
    vials: 7,
    size: 4,
    proven: true,
    layerings: 'abcf abeg acdg bcde defg',
  },
  {
    vials: 8,
    size: 4,
    proven: true,
    layerings: 'abcd adeh adfg bceh bcfg efgh',
  },
  {
    vials: 9,
    size: 4,
    proven: true,
    layerings: 'abch acde acef acgi bdei bdfg dfhi efgh',
  },
  {
    vials: 10,
    size: 4,
    proven: true,
    layerings: 'abdh aceh afhj aghi bcde bcfg bcij defi degj',
  },
  {
    vials: 11,
    size: 4,
    proven: true,
    layerings: 'abei abfg acgk adhj bcde bhjk cfij cghi degj dfik efhk',
  },
  {
    vials: 12,
    size: 4,
    proven: true,
    layerings: 'abeh ackl adgj afik bcij bdfl bghk cdhi cefg dejk egil fhjl',
  },
  {
    vials: 13,
    size: 4,
    proven: true,
    layerings: 'abfg acdi aehm ajkl bclm bdhk beij cegk cfhj defl dgjm fikm ghil',
  },
  {
    vials: 14,
    size: 4,
    proven: true,
    layerings: 'abel acdi adfn afjl agim ahjk bcjn bdkm bfgh biln cefm cehn cgkl degj dhlm efik gkmn hijm',
  },
  {
    vials: 15,
    size: 4,
    proven: true,
    layerings: 'ablo acfj adhi aekm agjn bcmn bdij behi bfgk cdkl cefi cgho degn dfmo ejlo fhln gilm hjkm ikno',
  },
  {
    vials: 16,
    size: 4,
    proven: true,
    layerings: 'abgk acfo adel ahim ajnp bcdj behp bflm bino cegi chln ckmp dfip dgmn dhko efkn ejmo fghj glop ijkl',
  },
  {
    vials: 17,
    size: 4,
    proven: true,
    layerings: 'abin acdh aekl afkm agnq ajop bcgo bdem bfhn bhjl bkpq cenp cfjm cikm cilq dfoq dglp diko djkn efgl egij ehoq fhip ghkm jmpq lmno',
  },
  {
    vials: 18,
    size: 4,
    proven: true,
    layerings: 'abci adkl aegk afhp ajmr anoq bdep bfgq bghj bkor blmn cdhn cemr cfjo cgil ckpq dejq dfir dgmo efln ehio fhkm gnpr hlqr ijkn impq jlop',
  },
  {
    vials: 19,
    size: 4,
    proven: false,
    layerings: 'abkn acfl adei agmr ahos ajpq bclp bdjo befg bhim bqrs cdeh cdgq cikr cjlm cnos dfms dkps dlnr ehls ehpr ejko emnq fhkq finp fjor ghjn gijs gklm gmop iloq',
  },
  {
    vials: 20,
    size: 4,
    proven: true,
    layerings: 'abef achk adhp agit ajms alnq aort bcgr bdgq bdmn bhpt bils bjko cdjo cers cfnr cipq clmt dekl dfst dikr eghl eimo ejqt enps fgjn fhij fkmp floq gkqs gmop hmqr hnos iknt jlpr',
  },
  {
    vials: 6,
    size: 5,
    proven: true,
    layerings: 'abcdf abdef acdef',
  },
  {
    vials: 7,
    size: 5,
    proven: true,
    layerings: 'abcde abdfg cdefg',
  },
  {
    vials: 8,
    size: 5,
    proven: true,
    layerings: 'abdfh abdgh acdeh bcefg',
  },
  {
    vials: 9,
    size: 5,
    proven: true,
    layerings: 'abceh acdfg acehi bdfgi defgh',
  },
  {
    vials: 10,
    size: 5,
    proven: true,
    layerings: 'abdej acdfj aghij bcefi befgh cdghi',
  },
  {
    vials: 11,
    size: 5,
    proven: true,
    layerings: 'abcik abdef acghj bcehk begij cdfhi dfgjk',
  },
  {
    vials: 12,
    size: 5,
    proven: false,
    layerings: 'abehk acgjk adfil bchil bdfgj bdfhk cdefj eghil hijkl',
  },
  {
    vials: 13,
    size: 5,
    proven: false,
    layerings: 'abehm acdhk adeij adfgl bcgim bdhlm bfjkm cefjl egikl fghij',
  },
  {
    vials: 14,
    size: 5,
    proven: true,
    layerings: 'abgln acjkl adeil afhlm bcgik bdefg bfijm bghjm cdehm cfjkn dejkn hikmn',
  },
  {
    vials: 15,
    size: 5,
    proven: false,
    layerings: 'abikl acgno adfjn aehjm bcein bcfmo bdghj cdgim chjkl deklo efgkl fhijo hklmn',
  },
  {
    vials: 16,
    size: 5,
    proven: false,
    layerings: 'abilm acegk adnop afhjn bcfop bdegn bhjko cdhjm cikln defik dgilo ehjlp ekmop fglmn ghijp',
  },
  {
    vials: 17,
    size: 5,
    proven: false,
    layerings: 'abfgn aceko adhmq aijlp bchip bdklm bejoq bfmop cdjmn cfglq defgp dfgio egijm ehlno fghjk iknpq',
  },
  {
    vials: 18,
    size: 5,
    proven: true,
    layerings: 'abhjo acfor adkln aegmn aimpq bcgkp bchlm bdefq binqr cdeio chjnq dghpr djkmr efhik ejlpr fgijl fmnop gkloq',
  },
  {
    vials: 19,
    size: 5,
    proven: true,
    layerings: 'abjos acgil ademn afhqr akprs bcehk bdklq bfinr bghmp cdfgs cjlmr cnopq degor dhijp efjlp eimqs fikmo gjknq hlnos',
  },
  {
    vials: 20,
    size: 5,
    proven: false,
    layerings: 'abmnq acfis adhlr aegjo aikpt bcort bdfgp beilq bghks bijln cdekn cglmt chjpq dhimo djqst efhnt emprs fjkmr fkloq ginqr lnops',
  },
];
