/**
 * Made by fixtures/pronunciations/make-near-words.ts from the CMU Pronouncing Dictionary; not to be edited by hand.
 * One line for each word of the grammar: the words that sound near it, each with its distance in hundredths.
 */
export const NEAR_WORDS = `
across cros:45 cross:45 krause:45 krausse:45 kross:45 eckroth:65 crosse:70 kroese:70 krus:70 lacross:70 lacrosse:70 ogress:75 accrues:80 aggress:85 croff:85 ercros:85 krauth:85 crose:90 crows:90 kroes:90 kroeze:90 groce:95 grohs:95 gros:95
added hadad:45 haddad:45 edit:50 aided:60 attard:65 addled:70 dud:70 dudd:70 headed:70 abbot:80 abbott:80 agate:80 ebbed:80
adjusted suggested:95 adjusting:100 rusted:110
again eggen:50 ogan:50 achene:55 akin:55 gahn:70 gan:70 gann:70 gun:70 gunn:70 kehn:70 kehne:70 ken:70 kenn:70 aachen:75 gain:75 gheen:75 guin:75 guinn:75 gyn:75 okane:80 okin:80 ubben:80
air aer:0 ayre:0 ere:0 err:0 eyre:0 heir:0 ayr:30 ear:30 era:45 erra:45 hair:45 haire:45 hairr:45 hare:45 hehr:45 herr:45 herre:45
airflow airflows:70 erle:95 airglow:100
all aul:0 aull:0 ahl:25 ohl:25 ole:25 uhl:25 hall:45 haul:45
ambient ambien:95 ambiance:100 ambience:100
amp hamp:45 hampe:45
ampacity ambassador:110
amperage umbrage:90
ampere amber:25 hamper:45 ember:50 amor:70 amp:70 amperes:70 camper:70 damper:70 gamper:70 kamper:70 pamper:70 samper:70 tamper:70
amperes ambers:25 hampers:45 embers:50 ampere:70 campers:70 dampers:70 pampers:70 anchors:90 amber:95 bumpers:95 emperors:95 empires:95 eppers:95 jumpers:95 tempers:95 umpires:95 uppers:95 alpers:100 amateurs:100
amps amp:70 apps:70 camps:70 champs:70 damps:70 kamps:70 lamps:70 ramps:70 tamps:70
another nother:45 nether:70 mother:80 nuffer:85 nusser:85 unser:85
ants aunts:0 entz:25 ands:45 hantz:45 anse:70 ant:70 antsy:70 atz:70 aunt:70 bantz:70 chants:70 ends:70 gantz:70 hentz:70 hunts:70 jantz:70 kantz:70 lantz:70 mantz:70 nantes:70 nantz:70 pants:70 rantz:70 schantz:70
anywhere unaware:85 anyway:100
around round:40 arend:60 arraigned:60 earned:70 surround:70
away erway:40 way:45 waye:45 wei:45 weigh:45 wey:45 whey:45
back backe:0 bak:0 bakke:0 bag:25 bagg:25 bagge:25 bec:25 beck:25 buc:25 pac:25 pack:25 pak:25 paque:25 aback:45 baca:45
backed becht:25 bucked:25 packed:25 pact:25 bacot:45 bagged:50 pecht:50 baked:60 balked:60 biked:60 booked:60 act:70 back:70 backe:70 baggott:70 bak:70 bakke:70 bakst:70 banked:70 basked:70 bat:70 batt:70 batte:70 baxt:70
bad bat:25 batt:25 batte:25 bed:25 bhatt:25 bud:25 budd:25 budde:25 pad:25
batteries batterers:60 batters:70 battery:70 adorees:95 badders:95 betters:95 bettes:95 bettors:95 buttars:95 butters:95 buttery:95 patrie:95 patties:95 matterease:100 patrice:110
bearing baring:0 behring:0 bering:0 pairing:25 paring:25 behling:55 belling:55 daring:55 derring:55 garing:55 gehring:55 peering:55 barring:60 berrong:60 boring:60 bowring:60 perrin:60 airing:70 baringer:70 barings:70 bearings:70 behringer:70 beringer:70 berringer:70
bearings barings:0 barrings:60 perrins:60 baring:70 bearing:70 behring:70 bering:70 brings:70 billings:85 barens:95 behrens:95 pairing:95 paring:95 baringer:100 behringer:100 beings:100 beringer:100 berries:100 berringer:100 berris:100 buries:100 earrings:100 herrings:100 behrns:105
beeps peeps:25 baetz:55 beaks:55 beats:55 beeks:55 beets:55 beitz:55 bietz:55 pips:55 beep:70 epes:70 babes:75 bibbs:75 bibs:75 bippus:75 paetz:80 peakes:80 peaks:80 peeks:80 peets:80 peetz:80 peitz:80 pietz:80
bench bunch:25 bunche:25 benge:30 bensch:30 punch:50 bange:55 bunge:55 pinch:55 binge:60 behn:70 behne:70 ben:70 bencher:70 benn:70 benne:70 betsch:70 benesch:75 benesh:75 benja:75
bent bendt:0 bente:0 bandt:25 bend:25 bunt:25 bunte:25 pent:25 benet:45 bennett:45 band:50 banned:50 bund:50 bunde:50 pant:50 penned:50 pundt:50 punt:50 dent:55 ghent:55 paint:55 bernd:60 berndt:60 bernt:60 bondt:60
between betweens:70
big bic:25 bick:25 pig:25 pigg:25 baig:30 beg:30 begg:30 begue:30
bit bid:25 pit:25 pitt:25 bait:30 bate:30 beat:30 beet:30 beit:30 bet:30 bett:30
black blagg:25 blech:25 bleck:25 plack:25 placke:25 plaque:25 plagge:50 pluck:50 blatt:55 brac:55 brack:55 brakke:55 braque:55 blake:60 bleak:60 bleich:60 blick:60 bloc:60 bloch:60 block:60 blok:60 bloke:60 back:70 backe:70
blade played:25 bled:30 bleed:30 plait:50 plate:50 braid:55 glade:55 plead:55 pled:55 blood:60 blowed:60 bloyd:60 blued:60 blurred:60 ablate:70 bade:70 bayed:70 blades:70 blamed:70 blay:70 blaydes:70 blazed:70 bley:70 lade:70
blank blanc:0 blanck:0 blanke:0 blunck:25 blunk:25 planck:25 plank:25 plunk:50 brank:55 blink:60 banc:70 bank:70 banke:70 banque:70 black:70 blanco:70 blanked:70 blankie:70 blanks:70 blanky:70 lank:70 brunk:80 brunke:80 prank:80
bled blood:25 pled:25 blade:30 bleed:30 blatt:50 plaid:50 plett:50 bread:55 bred:55 played:55 plead:55 blowed:60 bloyd:60 blued:60 blurred:60 bed:70 blared:70 blend:70 led:70 platt:75 platte:75 blab:80 blagg:80 brad:80
bleeding pleading:25 blading:30 breeding:55 beading:70 leading:70 plaiting:80 plating:80 bloating:85 blotting:85 plodding:85 braiding:85 breading:85 beating:95 pleadings:95 bedding:100 bidding:100 bleaching:100 bleeping:100 blending:100 lading:100 plaguing:110 plotting:110
block bloc:0 bloch:0 blok:0 bloke:25 ploch:25 plock:25 blog:50 plog:50 pluck:50 blot:55 broc:55 brock:55 brok:55 glock:55 black:60 blake:60 bleak:60 blech:60 bleck:60 bleich:60 blick:60 baack:70 bach:70 blah:70
blower bluer:30 plaugher:50 broer:55 bleier:60 blowy:60 bloyer:60 bleau:70 bloemer:70 bloor:70 blow:70 blowe:70 blowers:70 blowier:70 blur:70 bowar:70 lower:70 brawer:80
blue bleu:0 plew:25 plue:25 bleau:30 blow:30 blowe:30 ballou:45
board bored:0 bard:25 barred:25 boart:25 bort:25 pored:25 poured:25 aboard:45 boarda:45 borda:45 bart:50 parde:50 port:50 porte:50 bald:55 balled:55 bawled:55 borg:55 bourg:55 goard:55 gored:55 gourd:55 baird:60 bared:60
body boddie:0 boddy:0 bawdy:25 bhatti:25 bodey:25 bodi:25 bodie:25 buddie:25 buddy:25 badia:45 potty:50 prody:50 bobbi:55 bobbie:55 bobby:55 bada:60 bady:60 beady:60 beedie:60 beedy:60 biddie:60 biddy:60 birdie:60 birdy:60
both booth:30 buth:30 beauce:40 boese:40 bothe:40 bowse:40
bottom botten:35 bodden:60 boton:60 boughten:60 button:60 baham:70 botta:70 bottomed:70 bottoms:70 ottum:70 baucum:80 bataan:85 baton:85 bawden:85 boden:85 bowden:85 budden:85 poten:85 gotten:90 autumn:95 bada:95 baeten:95 batan:95 batten:95
bouncing pouncing:25 bensing:60 benzing:80 bowsing:90 bounces:100 bouncy:100 bounding:100
braze braise:0 brase:0 brace:20 praise:25 prays:25 preys:25 brees:30 breese:30 breeze:30 briese:30 breece:50 bress:50 bresse:50 brys:50 blaese:55 blaise:55 blaize:55 blase:55 blayze:55 blaze:55 grays:55 graze:55 preas:55 preis:55
brazed braised:0 praised:25 breezed:30 braced:45 blazed:55 grazed:55 browsed:60 bruised:60 appraised:70 braid:70 braise:70 brase:70 raised:70 razed:70 breast:75 brest:75 prized:85 brace:90 praise:95 prayed:95 prays:95 preyed:95 preys:95 brained:100
breaker brager:25 brecher:30 brecker:30 bricker:30 praeger:50 prager:50 blaker:55 breger:55 brieger:55 bracher:60 bracker:60 breakey:60 breaky:60 brocker:60 broecker:60 broeker:60 broker:60 brooker:60 brucker:60 baker:70 brake:70 brayer:70 brca:70 break:70
brief breathe:40 breece:40 brave:55 graef:55 graefe:55 graeff:55 grefe:55 greif:55 greiff:55 grief:55 braff:60 bruff:60 bereave:65 preece:65 priess:65 beef:70 brace:70 brea:70 breath:70 bree:70 bress:70 bresse:70 breth:70 brie:70
broken brogan:25 brooken:30 broten:55 brueggen:55 bracken:60 bowcan:70 blowgun:80 braughton:80 broughton:80 grogan:80 brackeen:85 bragan:85 procaine:85 brewton:85 bruton:85 brougham:90 bogan:95 bricom:95 brockman:95 brockmann:95 brockton:95 brokaw:95 broking:95 broxson:95
brown browne:0 drown:55 brain:60 bran:60 brann:60 braun:60 braune:60 brawn:60 brean:60 breen:60 bren:60 brenn:60 brin:60 brine:60 brinn:60 broin:60 bronn:60 broun:60 bruen:60 bruhn:60 brun:60 brune:60 brunn:60 bruun:60
bugs buggs:0 baggs:25 bags:25 beggs:25 begs:25 boggs:25 bogs:25 bergs:40 burges:40 buchs:45 bucks:45 bucs:45 peggs:50 pegs:50 pogs:50 buds:55 budz:55 biggs:60 bigs:60 backes:70 backs:70 balks:70 bax:70 becks:70
bulb pulp:50 bub:70 bubb:70 bulbs:70 bald:80 balled:80 barb:80 barbe:80 bawled:80 bold:80 bowled:80 gulp:80
bulged budged:70 bulge:70 barged:80 belched:80 bald:95 balled:95 bawled:95 bold:95 bowled:95 bult:95 ballade:100
bulging belching:55 budging:70 barging:80 balling:95 behling:95 belling:95 bohling:95 boling:95 bolling:95 bowling:95 bulges:100 berling:110 burling:110
burned bernd:25 berndt:25 bernt:25 burnt:25 bund:40 bunde:40 band:60 banned:60 bend:60 bind:60 bond:60 bonde:60 boned:60 bound:60 bunt:65 bunte:65 bern:70 bernat:70 berne:70 bird:70 burd:70 burn:70 burndy:70 burne:70
burning berning:0 bunning:40 durning:55 banning:60 behning:60 bening:60 benning:60 binning:60 boehning:60 bohning:60 boning:60 berninger:70 burnings:70 earning:70 panning:85 penning:85 pining:85 pinning:85 durnin:90 banging:95 beaming:95 benin:95 bombing:95 bonin:95
burnt bernd:0 berndt:0 bernt:0 burned:25 bunt:40 bunte:40 bernat:45 bandt:60 bendt:60 bent:60 bente:60 bondt:60 bonet:60 bonte:60 bund:65 bunde:65 pundt:65 punt:65 bern:70 berne:70 bernet:70 bernett:70 bert:70 berte:70
bus buss:0 busse:0 buzz:20 buzze:20 bass:25 basse:25 beauce:25 bess:25 besse:25 boese:25 bos:25 boss:25 bosse:25 bowse:25 pus:25 bearce:40 bearse:40 bearss:40 buff:40 burse:40 baas:45 baus:45 baz:45 boase:45
but butt:0 baht:25 bat:25 batt:25 batte:25 bet:25 bett:25 bhatt:25 boat:25 bot:25 bott:25 bought:25 bud:25 budd:25 budde:25 putt:25 bert:40 berte:40 birt:40 burt:40 burtt:40 abut:45
buzzes buses:20 basses:45 bosses:45 bowses:60 possess:75 busses:80 dozes:80 bozos:85 perses:85 purses:85 biases:90 benzes:95 opposes:95 aziz:100 buzzing:100 buzzy:100 gasses:100 posses:100
buzzing busing:20 bussing:20 pausing:50 posing:50 boozing:60 bowsing:60 passing:70 berzin:75 basing:80 bassin:80 dozing:80 persing:85 busting:90 benzing:95 boeing:95 bowing:95 opposing:95 bucking:100 budding:100 budging:100 bugging:100 bunning:100 butting:100 buzzes:100
cable kable:0 capel:25 caple:25 gable:25 keeble:30 kibbel:30 kibble:30 kibell:30 cadle:55 cagle:55 gaebel:55 gebel:55 giebel:55 kagel:55 keppel:55 kepple:55 table:55 cauble:60 cobble:60 coble:60 kabel:60 kauble:60 kerbel:60 kobel:60
cage kage:0 gage:25 gaige:25 gauge:25
call kall:0 kaul:0 caul:25 coal:25 coale:25 cole:25 coll:25 colle:25 cul:25 cull:25 gall:25 gaul:25 gaulle:25 kahl:25 kahle:25 koehl:25 koelle:25 kohl:25 kol:25 kole:25 koll:25 kolle:25 kuhl:25 kull:25
calling colling:25 culling:25 galling:25 koelling:25 kolling:25 caughlin:35 kohring:55 pauling:55 pawling:55 coiling:60 colin:60 collin:60 cooling:60 cowling:60 cullin:60 curling:60 keeling:60 kelling:60 killing:60 kolin:60 coleen:65 alling:70 cling:70 crawling:70
calls coals:25 coles:25 galls:25 gauls:25 kohls:25 goals:50 goelz:50 golz:50 gulls:50 cohrs:55 cores:55 kohrs:55 paules:55 pauls:55 cales:60 calles:60 coils:60 cools:60 curls:60 keels:60 kells:60 kills:60 kyles:60 alls:70
came kaim:0 game:25 chem:30 kehm:30 keim:30 kem:30 khem:30 kim:30 kimm:30 kym:30 cain:35 caine:35 cane:35 cayne:35 kain:35 kaine:35 kane:35 kayne:35
can caen:0 cahn:0 cann:0 kan:0 kann:0 kanne:0 gahn:25 gan:25 gann:25 kehn:25 kehne:25 ken:25 kenn:25 kuhne:25 kun:25 cam:35 camm:35 kam:35 kamm:35 kang:35 cana:45 kana:45 khanna:45
can't cant:0 kandt:0 kant:0 canned:25 cunt:25 gant:25 gantt:25 kent:25 ghent:50 kunde:50 pant:55 tant:55 conte:60 count:60 kindt:60 kint:60 ant:70 aunt:70 caen:70 cahn:70 can:70 cann:70 cannot:70 canter:70
cancel ganzel:45 gensel:50 consul:60 council:60 counsel:60 counsell:60 kinsel:60 kinsell:60 canceled:70 cancelled:70 cancels:70 cannell:70 cansler:70 cassel:70 castle:70 kasel:70 kasell:70 kassel:70 kastle:70 kienzle:80 kinzel:80 kuenzel:80 pencil:80 tensile:80
cannot connote:50 kennett:50 cant:70 kandt:70 kant:70 kanode:75 cannock:80 canup:80 canupp:80 kanak:80 connaught:85 curnutt:85 curnutte:85 gamut:85 gannett:85 keynote:85 cana:95 canada:95 canned:95 cunt:95 gant:95 gantt:95 kana:95 kanno:95
cap capp:0 kapp:0 cab:25 cup:25 cupp:25 gap:25 gapp:25 kepp:25 cappa:45 kappa:45
capacitor capacity:60 capacitors:70 kapusta:110
capacity capacitor:60 capacities:70 opacity:95
carry carey:25 carie:25 carrey:25 carrie:25 cary:25 curry:25 garey:25 garrey:25 garry:25 kairey:25 kari:25 karry:25 kary:25 kerrey:25 kerri:25 kerry:25 gary:50 gehry:50 calley:55 cally:55 garay:55 carew:60 carow:60 carrow:60
case caisse:0 cayce:0 cayes:20 kase:20 kayes:20 kays:20 kess:30 kiess:30 kis:30 kiss:30 gase:45 gays:45 gaze:45
celsius lcs:95 selfies:105
chafed chased:40 chaste:40 shift:60 chafe:70 chait:70 chest:70 shaved:80
change ange:70 chain:70 changed:70 changer:70 cheyne:70
changed chained:70 change:70 arranged:100 changer:100 ranged:100
charge george:55 char:70 charged:70 charger:70
charged chard:70 charge:70 charred:70 chargit:95 chart:95 barged:100 charger:100 charmed:100 jarred:100 shard:100
chassis chafee:40 chaffee:40 chaffy:40 jazzy:50 jesse:55 jessee:55 jessie:55 jessy:55 jessye:55 chaussee:60 assay:70 chancey:70 chancy:70 chasse:70 jaffe:70 jaffee:70 jaffey:70 cheesy:80 choosy:80
chattering shattering:30 shuttering:55 chatting:70 shuddering:80 uttering:95 battering:100 nattering:100 chattin:105
checks cheques:0 czechs:0 cheeks:30 chicks:30 jex:30 jacks:55 jaques:55 shacks:55 shucks:55 szucs:55 chalks:60 chokes:60 jakes:60 shakes:60 sheeks:60 sheiks:60 aix:70 check:70 chek:70 cheque:70 ches:70 chess:70 czech:70 eckes:70
circuit socket:60 circa:70 circuits:70 schutte:70 scutt:70 skutt:70 surrogate:70 sicotte:85 sucked:85 forget:90 forgot:90 circled:95 ergot:95 sarette:95 sarratt:95 scat:95 scot:95 scott:95 scud:95 serco:95 sirko:95 surat:95 surette:95 surrette:95
clean kleen:0 glean:25 crean:55 glen:55 glenn:55 glyn:55 glynn:55 plein:55 queen:55 clan:60 cline:60 clone:60 clown:60 clune:60 clyne:60 gleam:60 gleim:60 klahn:60 klan:60 klann:60 klein:60 kleine:60 kline:60 kloehn:60
cleaned gleaned:25 clint:55 klindt:55 klint:55 cloned:60 gleamed:60 claimed:65 clean:70 kleen:70 leaned:70 glint:80 greened:80 gland:85 klundt:85 craned:85 planed:85 creamed:90 clammed:95 cleat:95 cliett:95 climbed:95 glean:95 caned:100 careened:100
clear cleere:0 kleer:0 clair:30 claire:30 clare:30 klare:30 crear:55 creer:55 glare:55 queer:55 claar:60 clar:60 clore:60 klahr:60 klar:60 cleared:70 clearer:70 clears:70 cleary:70 kear:70 kier:70 kir:70 lear:70 grear:80
cleared glared:55 clear:70 cleere:70 kleer:70 geared:95 cared:100 clair:100 claire:100 clare:100 clearer:100 clears:100 cleary:100 klare:100 laird:100
climbing claiming:60 liming:70 gleaming:85 gloaming:85 clanging:95 cleaning:95 clinging:95 cloning:95 clowning:95 kleiman:95 klieman:95 lining:105 acclaiming:105 priming:110
clogged claud:70 claude:70 clawed:70 logged:70 cloaked:75 clocked:75 clubbed:80 plugged:80 clague:95 clog:95 glaude:95 klug:95
close klose:20 clauss:25 clos:25 closs:25 klaas:25 klos:25 kloss:25 klus:25 clothe:40 claus:45 clause:45 claws:45 glows:45 clews:50 clues:50 gloss:50 kloos:50 kroese:55 class:60 cleese:60 clouse:60 klas:60 klass:60 klaus:60
closed klose:70 glazed:85 cruised:85 close:90 caused:95 claud:95 claude:95 claus:95 clause:95 clawed:95 claws:95 closet:95 gloede:95 glossed:95 glowed:95 glows:95 clews:100 cloned:100 clothed:100 clued:100 clues:100 kloos:100
coil coile:0
cold called:25 colt:25 culled:25 gold:25 golde:25 cooled:30 cult:50 kalt:50 goold:55 gould:55 kolb:55 kolbe:55 polled:55 told:55 tolled:55 coiled:60 curled:60 killed:60 coad:70 coal:70 coale:70 code:70 colder:70 colds:70
column collom:0 collum:0 colomb:0 collomb:25 cullom:25 cullum:25 gollum:25 golomb:25 collen:35 golem:50 callum:60 colan:60 colen:60 colon:60 cullan:60 cullen:60 golen:60 kallam:60 kallen:60 kellam:60 kellum:60 killam:60 cala:70 clum:70
come cum:0 kumm:0 calm:25 cam:25 camm:25 chem:25 com:25 comb:25 combe:25 comm:25 gmbh:25 gum:25 gumm:25 kam:25 kamm:25 kehm:25 kem:25 khem:25 kolm:25 qom:25 kuhne:35 kun:35 kung:35
comes calms:25 cams:25 combes:25 combs:25 coms:25 gumbs:25 gums:25 gumz:25 kuns:35 kunz:35 kunze:35 kunce:55 tums:55 cannes:60 cans:60 cones:60 cons:60 coombs:60 coomes:60 guns:60 kanz:60 kimes:60 kims:60 konz:60
coming cumming:0 calming:25 combing:25 cunning:35 canning:60 conning:60 gunning:60 kenning:60 koning:60 comings:70 cummings:70 gaming:85 ganging:85 kamen:90 kamin:90 camping:95 caning:95 coining:95 cramming:95 kooning:95 terming:95 cunneen:100 cometh:100 commish:100
common caughman:25 coman:25 kamen:25 koman:25 connan:35 connon:35 kannan:35 konen:35 gaughman:50 goeman:50 gohman:50 caman:60 cammon:60 cayman:60 conan:60 cowman:60 cunnane:60 kaman:60 kamin:60 kamman:60 kerman:60 koehnen:60 koenen:60 kohnen:60
communicating communicated:100
company compagnie:0 accompany:45 companies:70 campen:95 compean:95 kampen:95 kempen:95 campana:110
compressor compressors:70 compress:95 compressed:100
condensate condensates:70
condenser condense:70 condensed:100
condensing commencing:105 condemning:105
conductor conductors:70 conduct:95 connecter:95 connector:95 conducts:100 conducted:110
connected connecting:100 connective:100
connection connexion:0 confection:70 connections:70 connexions:70 convection:70 conniption:85 conduction:95 collection:100 conviction:100 correction:110
connections connexions:0 confections:70 connection:70 connexion:70 collections:100 convictions:100 corrections:110
contactor conductor:50 contact:70 contractor:70 compactor:90 connecter:95 connector:95 contacts:100
contacts contact:70 contracts:70 conducts:75 contexts:95
continue continued:70 continues:70
control cantrall:50 cantrelle:60 controlled:70 controller:70 controls:70 cantrell:85 cointreau:95 cutrell:95 comptroller:105
cooked caked:60 cocked:60 kicked:60 cook:70 cooke:70 cookout:70
cool coole:0 kool:0 ghoul:25 coal:30 coale:30 cole:30 colle:30 koehl:30 koelle:30 kohl:30 kol:30 kole:30 kuehl:30 kuhle:45 kula:45
cooling koelling:30 pooling:55 tooling:55 calling:60 coiling:60 colling:60 cowling:60 culling:60 curling:60 keeling:60 kelling:60 killing:60 kolling:60 colin:65 kolin:65 cling:70 cooing:70 kling:70 schooling:70 galling:85 gehling:85 gerling:85 poling:85 polling:85
core coar:0 cohr:0 cor:0 corps:0 corr:0 kohr:0 car:25 carr:25 carre:25 goar:25 gore:25 gorr:25 kahr:25 karr:25 cora:45 kora:45
cores cohrs:0 kohrs:0 coarse:20 corse:20 course:20 cars:25 gores:25 kahrs:25 carse:45 gars:50 calls:55 pores:55 pours:55 cares:60 coors:60 kehres:60 koors:60 chorus:65 caras:70 chords:70 coar:70 cohr:70 cor:70 cordes:70
correct cracked:65 kracht:65 corrects:70 creaked:70 corrupt:80 kragt:90 garrette:95 guerette:95 guerrette:95 crept:95 precht:95 trekked:95 caked:100 caressed:100 deregt:100 direct:100 kicked:100
correction corrections:70 corruption:80 direction:100 collection:110 connection:110 connexion:110
cover gover:25 kever:25 kovar:25 kover:25 cofer:50 coffer:50 copher:50 kaufer:50 keffer:50 caver:60 coover:60 covey:60 covy:60 keever:60 cava:65 covered:70 covers:70 culver:70 gopher:75 puffer:80 tougher:80
covers coffers:50 cavers:60 cover:70 gophers:75 givers:85 covas:85 averse:90 calves:95 carvers:95 caverns:95 confers:95 coves:95 evers:95 gover:95 governs:95 kever:95 kovar:95 kover:95 overs:95 colors:100 colours:100 comers:100 covered:100 cullers:100
cubic kubic:0 kubick:0 kubik:0 kubica:45 cubit:55 pubic:55 kubrick:70 cupit:80 kleubeck:85 kupek:95 cusic:100 cusick:100 kubin:100 kuby:100 kulich:100 kulick:100 kulik:100
current grunt:65 cunt:70 curran:70 curren:70 currents:70 careened:85 curnutt:90 curnutte:90 grandt:90 grant:90 grund:90 cant:95 carone:95 conte:95 corrente:95 correnti:95 corron:95 kandt:95 kant:95 kent:95 koranda:95 kunde:95 kurland:95 corrupt:100
cut kut:0 cat:25 catt:25 caught:25 coat:25 cot:25 cote:25 cott:25 cudd:25 gut:25 gutt:25 kat:25 katt:25 kett:25 khat:25 kot:25 kote:25 kott:25 curt:40 kirt:40 kuhrt:40 kurt:40
cutout cutouts:70 cadet:85 cadotte:85 kohout:95 shutout:100
cuts cutts:0 kutz:0 cats:25 coats:25 cotes:25 cots:25 guts:25 kaatz:25 kats:25 katz:25 kautz:25 ketz:25 kotz:25 curts:40 kertz:40 kirts:40 kurtz:40 cads:50 gatz:50 gets:50 getts:50 getz:50 goats:50 goetz:50
cycles circles:60 sickels:60 sickles:60 cycle:70 skulls:70 seagulls:85 scholes:95 scoles:95 seigel:95 sigle:95 cycled:100 michaels:100 michiels:100 mikles:100 sidles:100
dampers tempers:50 amperes:70 damper:70 bumpers:80 damps:90 ambers:95 demars:95 dumper:95 tamper:95 campers:100 hampers:100 pampers:100 danners:105 tempos:110 timbers:110
dark darke:0 dorch:25 torque:50 barch:55 bark:55 barke:55 dahlke:55 dart:55 dartt:55 arc:70 ark:70 dar:70 darcie:70 darco:70 darga:70 darker:70 darkie:70 doc:70 dock:70 barg:80 borck:80 bork:80 dort:80 garg:80
data date:45 dado:50 daido:50 dedo:50 beta:55 ditto:55 teta:55 tita:55 tater:65 dade:70 datas:70 dayton:70 deater:70 debtor:70 deeter:70 deighton:70 deter:70 detter:70 dieter:70 ditter:70 tait:70 taite:70 taitt:70 tate:70
dead dad:25 debt:25 dud:25 dudd:25 ted:25 dade:30 dede:30 deed:30 did:30 diede:30
defrost dearest:95 deforest:95 defraud:95
defrosted defrauded:95 defrosting:100
degree decree:25 degray:60 deary:70 deery:70 degreed:70 degrees:70 diery:70 decry:85 degraw:90 decrease:95 decreed:95 decrees:95 dickey:95 dickie:95 dicky:95 teary:95 tigrean:95 dairy:100 degrade:100 depree:100 derry:100 dery:100 digby:100 dimry:100
degrees decrees:25 decrease:45 degree:70 decries:85 decree:95 dairies:100 defrees:100 defries:100 degrades:100 degreed:100 dieguez:100 digress:110 diggers:110
delta dealt:45 dela:70 della:70 deltas:70 delco:80 dildo:80 tilda:80 tilde:80 dalto:85 dalla:95 delo:95 deltak:95 deltec:95 dulled:95 teta:95 belter:95 delker:95 belt:100 data:100 delk:100 delma:100 delp:100 tilt:100
design dizon:60 designed:70 designer:70 designs:70 discern:80 dishon:80 dison:80 disown:80 deason:90 define:100 desire:100 divine:100 resign:100
device devise:20 defies:45 devoss:60 deffeyes:75 deface:85 davis:90 devised:90 divides:90 divis:90 divisor:90 defy:95 deweiss:100 divide:100 divine:100
dirty bertie:55 berty:55 durkee:55 detty:60 ditty:60 dottie:60 dotty:60 doty:60 doughtie:60 doughty:60 douty:60 dowty:60 duty:60 duddy:65 dirt:70 dirtier:70 doherty:70 dougherty:70 birdie:80 birdy:80 turkey:80
discharge discharged:70 mischarge:100
discharged discharge:70 mischarged:100
disconnect disconnects:70
disconnected disconnecting:100
display displace:70 displayed:70 displays:70 displease:100
ditto dedeaux:25 dado:55 daido:55 data:55 dedo:55 tito:55 dato:60 deter:60 ditter:60 ditty:60 doto:60 ditlow:70 teta:80 tita:80
does daus:25 dawes:25 daws:25 doze:25 daas:45 das:45 dass:45 dazs:45 des:45 dohse:45 dos:45 dose:45 doss:45
doesn't docent:45 dozen:70 besant:80 decent:80 bessent:100 dozens:100 descent:105 dessent:105 dissent:105
domed doomed:30 dammed:60 damned:60 dawned:60 deemed:60 dimmed:60 donde:60 donned:60 dunned:60 toned:60 dohme:70 dome:70 bombed:80 bummed:80 gummed:80
done donne:0 dun:0 dunn:0 dunne:0 daane:25 dahn:25 dan:25 dann:25 daun:25 dawn:25 dehn:25 dehne:25 den:25 denn:25 denne:25 doan:25 doane:25 doanh:25 dohn:25 don:25 donn:25 ton:25 tonne:25 dum:35
door doar:0 doerr:0 dohr:0 dore:0 dorr:0 dar:25 tor:25 tore:25 torr:25 torre:25 adore:45 dora:45
double dabble:25 doble:25 dabhol:50 bubble:55 deibel:60 deubel:60 dibble:60 dible:60 diboll:60 diebel:60 dubiel:60 adabelle:70 audible:70 doable:70 doubled:70 doubles:70 edible:70 topel:75 topple:75 babble:80 babel:80 bauble:80 bobble:80 dawdle:80
down downe:0 town:25 towne:25 dowen:45
drain draine:0 drane:0 train:25 trane:25 dahrain:45 brain:55 duane:55 dwayne:55 grain:55 grein:55 treen:55 trinh:55 draughn:60 drawn:60 drone:60 drown:60 dream:65 dring:65 terrain:65 torain:65 dain:70 dane:70 dayne:70 deign:70
drained trained:25 brained:55 grained:55 trend:55 droned:60 drowned:60 dreamed:65 deigned:70 drain:70 draine:70 drane:70 rained:70 reigned:70 reined:70 trent:80 greened:85 grinde:85 grinned:85 dreamt:90 trimmed:90 drummed:95 strained:95 trade:95 train:95
draw traugh:25
drawing drying:60 drawings:70 dring:70 growing:80 trying:85 draughon:95 droning:95 dropping:95 drubbing:95 drugging:95 drumming:95 rowing:95 truong:95
draws draus:0 dross:20 droz:25 brause:55 drees:60 dreese:60 dreis:60 drewes:60 drews:60 dries:60 druse:60 druze:60 daus:70 dawes:70 daws:70 draw:70 drawers:70 drawls:70 trus:70 truss:70 bross:75 brose:80 broz:80 drace:80
drier dreier:0 dryer:0 trier:25 breier:55 briar:55 brier:55 bryer:55 dwyer:55 grier:55 drayer:60 dreyer:60 driver:70 dry:70 drye:70 dryers:70 dryser:70 dyar:70 dyer:70 ryer:70
drive derive:40 drove:60 dive:70 driver:70 drives:70 dry:70 drye:70
driven riven:70 griffen:80 griffon:80 draffen:85 graven:85 divan:95 striven:95 criven:100 devan:100 devon:100 drinnon:100 drivel:100 ravan:100 raven:100
drop tropp:25 drub:50 trupp:50 gropp:55 drape:60 drip:60 droop:60 drupe:60 dopp:70 dropped:70 dropper:70 drops:70 eyedrop:70 raap:70 ropp:70 traub:75 droke:80 druck:80 grob:80 groep:80 grope:80 grupp:80 trot:80 trott:80
dropped draped:60 dripped:60 drooped:60 drop:70 dropout:70 drubbed:75 groped:80 trapped:85 tripped:85 trooped:85 doped:95 roped:95 topped:95 tropp:95 trot:95 trott:95 cropped:100 dropper:100 drops:100 drost:100 propped:100
dropping drubbing:50 draping:60 dripping:60 drooping:60 droppings:70 groping:80 trotting:80 trapping:85 tripping:85 trooping:85 drawing:95 robbing:95 roping:95 topping:95 cropping:100 propping:100 dropkin:105 trucking:105
drops drapes:60 dripps:60 drips:60 drupes:60 drop:70 dropsy:70 eyedrops:70 rops:70 gropes:80 trots:80 traipse:85 traps:85 trips:85 troops:85 troupes:85 droppers:90 droz:90 dross:95 ropes:95 topps:95 tops:95 tropp:95 crops:100 dropped:100
dry drye:0 tri:25 trie:25 try:25
dual dewall:0 duel:0 deuel:25 dewaele:25 dule:45 dahle:60 dial:60 dowel:60 doyel:60 dyal:60 dewald:70 dewalt:70 dewulf:70 doodle:70 dougal:70 dougl:70 duals:70 ducal:70 dueled:70 duels:70 dugal:70 dull:70 dulle:70 tool:70
each eash:30 ege:30 etch:30 ich:30 itch:30
earth eartha:45 hirth:45
easily easley:45 easel:70 sullie:90 sully:90 heasley:90 iole:95 zelie:95 busily:100 ezzell:100 nasally:100 zalay:100
easy izzi:30 izzy:30
egg egge:0 eck:25 ugh:25 eeg:30 hegg:45 hegge:45
emptied empted:30 empty:70 emptier:100 empties:100 impede:100 tempted:100
empty emptor:60 empey:70 empie:70 empt:70 emptied:70 emptier:70 empties:70 humpty:70 dumpty:95 umpteen:95 empted:100 empting:100 emptive:100 empts:100 mit:100
end ende:0 ent:25 und:25 emde:35
energized energize:70 energizer:100
engaged engage:70 enraged:100
evacuation evacuations:70
evap yvette:80
evaporator evaporate:70 evaporates:100 evaporated:110
everything everythings:70
expansion expansions:70 extension:80
external externally:70
factory factor:70 factories:70 victory:85 fechter:95 factly:100 factored:100 factoring:100 factors:100 thackeray:110
falling foaling:25 follin:35 failing:60 feeling:60 fehling:60 felling:60 filing:60 filling:60 foiling:60 fooling:60 fouling:60 salling:65 farling:70 fling:70 following:70 sahlin:75 veiling:85 volin:85 alling:95 falin:95 fallen:95 fallin:95 falynn:95 faulding:95
falls false:20 folz:25 valls:25 salls:40 salz:40 sauls:40 folse:45 voelz:50 voles:50 volz:50 fours:55 fails:60 fales:60 feels:60 fells:60 fels:60 files:60 fills:60 foils:60 fools:60 fouls:60 soles:65 souls:65 sowles:65
fan fann:0 phan:0 fehn:25 fen:25 fenn:25 fun:25 phen:25 van:25 vann:25 fang:35 pham:35 san:40 than:40 thanh:40
farads ferrets:45 ferrous:90 ferret:95 frauds:95 pharaohs:95 pharos:95 veras:95 harrods:100 fords:105 ceredase:110
fat fad:25 fett:25 fette:25 phut:25 vat:25 sat:40
feels veals:25 fails:30 fales:30 fells:30 fels:30 fills:30 seales:40 seals:40 fiers:55 vales:55 valles:55 veils:55 falls:60 files:60 foils:60 folz:60 fools:60 fouls:60 cells:70 cels:70 eales:70 eels:70 feel:70 feelers:70
feet feat:0 fede:25 feed:25 veit:25 fait:30 fate:30 feight:30 fete:30 fett:30 fette:30 fit:30 fitt:30 seat:40
filter felter:30 felder:55 fielder:55 veltre:55 falter:60 filler:70 filtered:70 filters:70 fitter:70 folder:85 felker:85 felty:90 fidder:95 filled:95 villar:95 felda:95 failor:100 faler:100 feeler:100 feldt:100 feller:100 felt:100 feltler:100 feltner:100
filthy filley:70 filly:70 filth:70 philley:70 phillie:70 philly:70 villi:95 faley:100 feeley:100 feely:100 filby:100 filet:100 philby:100
fine fein:0 feyen:0 vine:25 sein:40 sign:40 sine:40 thein:40 thine:40 affine:45 fina:45
finish finnish:0 furnish:60 finished:70 finisher:70 vanish:85 fiendish:100 finch:100 finney:100 finnick:100 finnie:100 finning:100 minish:100 phinney:100
finished furnished:60 finish:70 finnish:70 vanished:85 famished:95 vinet:95 finisher:100 sinnett:110
first furst:0 versed:25 fussed:40 fust:40 thirst:40 faced:60 fast:60 faust:60 feast:60 feist:60 fessed:60 fest:60 fist:60 foist:60 foust:60 pfost:60 firsts:70 furse:70 surfed:80
fitted fetid:30 faded:55 fettered:70 vetoed:80 fated:90 feted:90 ceded:95 fiddled:95 fittest:95 cited:100 fitton:100 knitted:100 vedette:100
fitting fetting:30 sitting:40 fading:55 feeding:55 vetting:55 fighting:60 footing:60 fittings:70 flitting:70 seating:70 setting:70 voting:85 faking:85 ceding:95 fiddling:95 fitton:95 seeding:95 sipping:95 bitting:100 citing:100 eating:100 fainting:100 fearing:100 feasting:100
fittings feedings:55 fightings:60 footings:60 fitting:70 seatings:70 settings:70 iddings:95 fetting:100 fillings:100 gittings:100 sightings:100 sitting:110 stings:110
fixed sixed:40 affixed:45 vexed:55 faxed:60 fickes:70 fist:70 fix:70 fixate:70 sexed:70 sickest:85 vicks:95 vist:95 faced:100 faked:100 fakes:100 feast:100 fecht:100 fessed:100 fest:100 fickett:100 fittest:100 fixer:100 flexed:100 mixed:100
flare flair:0 fleer:30 fraire:55 frere:55 freyre:55 flohr:60 floor:60 flor:60 flore:60 fair:70 faire:70 fare:70 fehr:70 ferre:70 flared:70 flares:70 lair:70 lare:70 lehr:70 phair:70
flat flatt:0 flad:25 flett:25 slaght:40 slat:40 fled:50 flood:50 flud:50 fludd:50 vlad:50 flack:55 flak:55 flap:55 fleet:60 flight:60 flirt:60 flit:60 float:60 flott:60 flout:60 fluet:60 flute:60 slut:65 fat:70
float flott:25 flowed:25 fluet:30 flute:30 sloat:40 sloate:40 afloat:45 flawed:50 flood:50 flud:50 fludd:50 flat:60 flatt:60 fleet:60 flett:60 flight:60 flirt:60 flit:60 flout:60 slot:65 slott:65 slowed:65 slut:65 flo:70
flow flo:0 floe:0 flowe:0 flaugh:25 flaw:25 flew:30 flu:30 flue:30 sloe:40 slow:40
flushed flashed:25 fleshed:25 slashed:65 flush:70 fledged:80 flasch:95 flash:95 flat:95 flatt:95 flesch:95 flesh:95 flett:95 float:95 flood:95 flott:95 flud:95 fludd:95 lashed:95 blushed:100 fluffed:100
found sound:40 fanned:60 feigned:60 fend:60 fiend:60 find:60 fined:60 fond:60 fund:60 pfund:60 phoned:60 founder:70 frowned:70
frame fraim:0 frain:35 fraine:35 frane:35 frayn:35 frayne:35 frein:35 freyne:35 flaim:55 flame:55 frahm:60 fram:60 fraum:60 frome:60 fromm:60 fromme:60 frum:60 vrain:60 frean:65 freen:65 fame:70 fayme:70 framed:70 framer:70
free freeh:0 fray:30 frey:30 ferree:40 furry:40 freia:45
freed frede:0 freid:0 friede:0 freet:25 frayed:30 fread:30 fred:30 freda:30 frida:45 frieda:45 frate:55 freight:55 fret:55 frett:55 fraud:60 freud:60 fried:60 threatt:65 threet:65 fede:70 feed:70 ferried:70 fredo:70 free:70
freely frailey:30 fraleigh:30 fraley:30 friley:30 frilly:30 frawley:60 verrilli:65 feeley:70 feely:70 ferrelli:70 freel:70 friedley:70 friedli:70 friedly:70 friel:70 reali:70 reily:70 rielly:70 riely:70 frary:85 freeway:85 creely:100 faley:100 filley:100
frequency frequencies:70
frozen frusen:30 frieson:60 rosan:70 rosen:70 friesen:80 frison:80 rowson:90 rosanne:95 roseanne:95 rosin:95 rozen:95 frewen:100 frohman:100 froman:100
full foal:30 foale:30 fohl:30 fool:30 pfohl:30
furnace furnas:0 forness:60 furness:60 furniss:60 ferns:65 firmness:70 urness:70 thermos:75 finesse:85 vaness:85 vanous:85 venice:85 venous:85 venus:85 vernis:85 otherness:85 farinas:90 vernes:90 famous:95 fearnow:95 verna:95 virna:95 burness:100 fergus:100
fuse views:25 theus:40 flus:55 ewes:70 feuds:70 few:70 foos:70 fugues:70 fumes:70 funes:70 fused:70 hughs:70 phew:70 yoos:70
fuses fuzes:60 uses:90 fuchsias:100 muses:100 souzas:110 users:110
gas gass:0 cas:25 cass:25 guess:25 gus:25 guss:25 kass:25 gaf:40 gaff:40 gaffe:40 gath:40 ghez:45 guez:45
gauge gage:0 gaige:0 cage:25 kage:25
gauges ages:70 cages:85 beiges:85 gashes:90 gerchas:90 cajuns:95 edges:100 galas:100 gazes:100 geisha:100 ijaz:100 pages:100 wages:100
get goette:0 gat:25 gatt:25 ged:25 gut:25 gutt:25 kett:25 gait:30 gate:30 git:30
getting gatting:25 gutting:25 gating:30 geeting:30 cutting:50 gadding:50 kaeding:50 betting:55 keating:55 goetting:60 gerding:70 gettinger:70 gettings:70 batting:80 bedding:80 butting:80 kading:80 kidding:80 catain:85 coating:85 girding:85 goading:85 godding:85 goding:85
give giff:25 gave:30
gives caves:55 govs:60 give:70 givers:70
goes ghose:0 goghs:0 gose:0 cose:25 gaus:25 gause:25 gauze:25 gaz:25 goos:30 goss:45 gosse:45 goza:45 gus:45 guss:45
going boeing:55 bowing:55 cooing:55 coen:60 gowing:60 glowing:70 goading:70 goding:70 goering:70 goetting:70 goings:70 growing:70 owing:70
gone gawne:0 goan:25 goen:25 gohn:25 gun:25 gunn:25 gong:35 gaughan:45 gauna:45 gawen:45
good goode:0 could:25 goad:30 goedde:30 goede:30 gooda:45
goose goos:20 coos:25 goof:40 guth:40 coups:45 koos:45
green greene:0 crean:25 grain:30 grein:30 gren:30 grin:30 greim:35 grieme:35 brean:55 breen:55 crain:55 craine:55 crane:55 crayne:55 glean:55 gouin:55 krain:55 krane:55 krein:55 kren:55 krenn:55 cream:60 creme:60 grahn:60
grey gray:0 graye:0 cray:25 kray:25 krey:25
grille grill:0 crill:25 krill:25 grail:30 grell:30 grelle:30 brill:55 crail:55 creal:55 creel:55 drill:55 grear:55 greer:55 krell:55 grahl:60 grall:60 graul:60 groll:60 growl:60 gil:70 gill:70 grilled:70 grilli:70 grillo:70
grilles grills:0 drills:55 growls:60 gills:70 grill:70 grille:70 griz:70 crawls:85 brailles:85 gorillas:85 guerillas:85 guerrillas:85 crill:95 kills:95 krill:95 kriz:95 frills:100 gales:100 galles:100 gayles:100 grail:100 grays:100 graze:100 greis:100
ground crowned:25 aground:45 browned:55 drowned:55 grained:60 grand:60 grande:60 greened:60 grind:60 grinde:60 grinned:60 groaned:60 groined:60 grund:60 grounder:70 grounds:70 round:70 craned:85 grandt:85 grant:85 grunt:85 crowd:95 crown:95 crowne:95
hand hund:25 hamed:35 hanged:35 handa:45 hundt:50 hunt:50 hunte:50 hemmed:60 hind:60 hinde:60 honed:60 hound:60 hynd:60 ant:70 aunt:70 end:70 ende:70 hadd:70 hander:70 hands:70 handy:70 hann:70 hanta:70 und:70
handler hendler:25 andler:45 handley:60 handly:60 antler:70 endler:70 hander:70 handlers:70 hendley:85 hundley:85 entler:95 chandler:100 handier:100 kandler:100 landler:100 mandler:100 sandler:100 handily:105 hadleigh:110 handa:110 handlon:110 huntley:110 huntly:110
hang heng:25 hung:25 hahm:35 ham:35 hamm:35 hamme:35 hann:35 ang:45
hard hardt:25 hart:25 harte:25 hartt:25 heart:25 hoard:25 hord:25 horde:25 ard:45 harb:55 haired:60 ahart:70 art:70 haar:70 har:70 hardee:70 harder:70 hardey:70 hardie:70 hards:70 hardy:70 harmed:70 harned:70 hodde:70
head hadd:25 hett:25 hud:25 hade:30 haid:30 heed:30 heyd:30 heyde:30 hid:30 ahead:45 hedda:45
heat heed:25 haight:30 hait:30 hate:30 hett:30 hit:30 hitt:30 eat:45
heater heeter:0 hater:30 hayter:30 hitter:30 eater:45 hader:55 haider:55 header:55 hatter:60 haueter:60 hauter:60 herter:60 hooter:60 hotter:60 huerter:60 hutter:60 eader:70 heat:70 heaters:70 heer:70 ater:75 etter:75
help heldt:55 helke:55 helt:55 hilb:55 elbe:70 hehl:70 hell:70 helle:70 helped:70 helper:70 helps:70 hep:70 hepp:70 heppe:70 hulk:80 hult:80
herm hurm:0 hearn:35 hearne:35 hern:35 herne:35 hirn:35 hurn:35 hum:40 humm:40
hertz aerts:45 harts:60 hartz:60 hearts:60 hetz:70 hults:80 hultz:80 hilts:85 hiltz:85 hairs:90 hares:90 harrods:90 haired:95 hats:95 hatz:95 huts:95 harris:100 hates:100 heats:100 helds:100 helots:100 hentz:100 hits:100 hitz:100
high heye:0 hye:0 aye:45 eye:45
hit hitt:0 hid:25 haight:30 hait:30 hate:30 heat:30 hett:30
hold holde:0 holed:0 hald:25 hauled:25 hohlt:25 holt:25 holte:25 hulled:25 ahold:45 holda:45 old:45 olde:45 halt:50 hult:50 hailed:60 heald:60 healed:60 heeled:60 held:60 hild:60 hilde:60 howled:60 hurled:60 auld:70
holding hoelting:25 halting:50 holdings:70 holing:70 harding:80 hoarding:80 holguin:90 halling:95 hauling:95 hodding:95 holden:95 holling:95 bolding:100 boulding:100 folding:100 golding:100 molding:100 moulding:100 harting:105
horse hoarse:0 hors:20 whores:20 horace:45 horus:45 harff:65 harth:65 hearth:65 oars:65 ores:65 arce:70 arse:70 hoar:70 hoare:70 hoerr:70 horr:70 horsed:70 horsey:70 horst:70 whore:70 halls:75 hauls:75 hairs:80 hares:80
horsepower hoffpauir:110
hosed host:45 housed:60 hoes:70 hose:70 hust:70 oozed:75
hot hott:0 haught:25 haut:25 haute:25 hodde:25 hote:25 hut:25 hutt:25 hata:45 ott:45 otte:45
housing hazing:60 herzing:60 hosing:60 housings:70 hassing:80 hessing:80 hissing:80 hausen:95 arousing:100 bowsing:100 howling:100 rousing:100
humming heming:25 hemming:25 homing:25 hanging:60 hanning:60 henning:60 honing:60 hermine:75 hamling:95 hammering:95 haning:95 harming:95 hawing:95 helming:95 heminger:95 hemminger:95 hemmings:95 henin:95 hoeing:95 coming:100 cumming:100 dumbing:100 huffing:100 hugging:100
hums hammes:25 hams:25 hems:25 holmes:25 homes:25 hommes:25 homs:25 herms:40 haimes:60 hames:60 hangs:60 hannes:60 haymes:60 heims:60 hennes:60 hens:60 henze:60 hiems:60 himes:60 hones:60 hons:60 hymes:60 hymns:60 ambs:70
hurt herdt:0 hert:0 hirt:0 hurtt:0 heard:25 herd:25 hird:25 hurd:25 hut:40 hutt:40 erte:45 herta:45 hurta:45
hush hasch:25 hash:25 hasz:25 hesch:25 hoesch:25 hosch:25 huch:30 hutch:30 hersch:40 hersh:40 hirsch:40 hirsh:40 hursh:40
ice ais:20 ayes:20 eis:20 eyes:20 ise:20 heise:45 heiss:45 hice:45
iced heist:45
inch inge:30 hinch:45
inches injures:70 itches:70 innes:90 inaez:95 inez:95 ijaz:100 ninjas:100
indoor indoors:70 indal:80 endear:90 indo:95 endara:100 endorse:100 india:100 inshore:100
infinite infant:45 invent:95 enfant:100
infinity infiniti:0 infirmity:95 infinitive:100
injured injure:70 innard:70 enjoyed:90 inert:95 aungier:100 incurred:100 inferred:100 injures:100 injury:100 interred:100 inward:100
inside incite:25 insight:25 ensued:60 incised:70 insider:70 insides:70 insert:85 inset:85 onsite:85 incites:95 insights:95 incise:100 inferred:100
installed instilled:60 install:70 installer:100 installs:100
insulation inhalation:70 installation:70 inflation:85 immolation:105
inverter invert:70 invader:85 innovator:105
isn't ison:90 sundt:90 resent:95 zandt:95 zant:95 zent:95 besant:100 easement:100 eason:100 peasant:100 pheasant:100
joint joynt:0 joined:25 gent:60 jandt:60 jaunt:60 jent:60 jundt:60 join:70 joints:70
joints gents:60 gentz:60 jantz:60 jaunts:60 jentz:60 joint:70 joynt:70 chants:90 joines:90 joins:90 joynes:90 schantz:90 shantz:90 shontz:90 shunts:90 tschantz:90 joined:95 joists:100 points:100
juice jews:20 joos:20 cheuse:30 jewess:45
jump chump:30 champ:55 chomp:55 schamp:55 schempp:55 shamp:55 giampa:70 jumped:70 jumper:70 jumps:70 jumpy:70
jumped jump:70 junked:90 empt:95 bumped:100 chump:100 dumped:100 humped:100 jumper:100 jumps:100 jumpy:100 lumped:100 pumped:100 schumpert:100 shumpert:100 thumped:100
jumper jumpy:60 giampa:65 jump:70 jumpers:70 schamber:80 jumbo:85 junker:90 ampere:95 jammer:95 ciampa:95 bumper:100 chump:100 dumper:100 jumped:100 jumps:100 lumper:100 mumper:100 schumpert:100 shumpert:100 thumper:100
jumpered schumpert:55 shumpert:55 jumper:70 jumped:95 jumpers:100
jumping chomping:55 junking:90 jamming:95 bumping:100 dumping:100 jumpy:100 lumping:100 pumping:100 thumping:100
keep cape:30 kepp:30 kip:30 kipp:30
kicks cakes:30 geeks:55 kippes:55 kits:55 kitts:55 kitz:55 picks:55 pix:55 ticks:55 tics:55 coax:60 cocks:60 cokes:60 cooks:60 cox:60 coxe:60 kirks:60 kokes:60 kooks:60 clicks:70 cliques:70 gigs:70 kick:70 kinks:70
killed gild:25 guild:25 kilt:25 gilt:50 guilt:50 called:60 coiled:60 cold:60 cooled:60 culled:60 curled:60 gilda:70 kid:70 kidd:70 kidde:70 kilday:70 kildee:70 kildow:70 kill:70 kille:70 kyd:70 skilled:70 kelda:75 geared:80
kilo kyllo:0 guillot:25 kila:25 kalo:30 kellow:30 kayla:55 pillow:55 callow:60 calo:60 coehlo:60 colo:60 killer:60 killey:60 killough:60 carrillo:70 cloe:70 clow:70 kildow:70 kilgo:70 kill:70 kille:70 kurylo:70 schillo:70 gila:80
kilohm killam:25 gillam:50 gillum:50 kellam:55 kellum:55 kilen:60 killen:60 kilo:70 kyllo:70 callum:85 collom:85 collomb:85 collum:85 colomb:85 column:85 cullom:85 cullum:85 ghuloum:85 gillan:85 gillean:85 gillem:85 gillen:85 gillon:85 guillaume:85
kilohms kellams:55 collums:85 columns:85 kellems:90 killam:95 killings:95 kilos:100 clones:105 kilns:105
kit kitt:0 git:25 kid:25 kidd:25 kidde:25 kyd:25 cate:30 kate:30 keitt:30 kett:30
known naan:25 non:25 none:25 nuhn:25 nun:25 nunn:25 noon:30 noone:30 gnome:35 moan:35 moen:35 mon:35 mone:35 noam:35 nome:35
landed landa:70 ended:95 lando:95 landow:95 candid:100 handed:100 landen:100 landess:100 landon:100 laundered:100 lambda:105 lander:110 landor:110 landward:110 slandered:110
landing lanting:25 lending:25 landin:35 lundin:60 anding:70 blanding:70 lambdin:70 landings:70 lanning:70 ranting:80 rending:80 wending:80 lundeen:90 blending:95 ending:95 landen:95 landon:95 lendings:95 lenning:95 planting:95 slanting:95 banding:100 handing:100 lancing:100
leak leake:0 leek:0 leick:0 league:25 lake:30 lech:30 leck:30 lek:30 lick:30
leaking licking:30 leaping:55 legging:55 reeking:55 wreaking:55 lacking:60 liking:60 locking:60 looking:60 lucking:60 lurking:60 eking:70 lagging:85 logging:85 lugging:85 letting:85 raking:85 waking:85 wrecking:85 lakin:95 luckyn:95 lukin:95 aching:100 clicking:100
leaving leafing:25 living:30 weaving:55 loving:60 levin:65 leavings:70 laughing:85 raving:85 revving:85 waiving:85 waving:85 lavin:95 leven:95 levene:95 livan:95 lovin:95 geving:100 heaving:100 laying:100 leaching:100 leading:100 leaking:100 leaming:100 leaning:100
left laughed:25 luffed:25 luft:25 leafed:30 lift:30 lest:40 loft:60 last:65 lust:65 cleft:70 laced:70 leased:70 least:70 leff:70 leffert:70 lefort:70 lefty:70 let:70 lett:70 list:70 liszt:70 loved:75 lived:80 raft:80
leg legg:0 legge:0 lech:25 leck:25 lek:25 lug:25 league:30
less les:0 lass:25 lace:30 lease:30 leece:30 leese:30 leise:30 lis:30 liss:30 leff:40 leth:40 luz:45
let lett:0 led:25 late:30 leet:30 leete:30 leight:30 leite:30 lit:30 litt:30 leota:45 leta:45
lifted listed:40 gifted:100 lasted:100 lifton:100 ellestad:110 liford:110 lifter:110 littered:110 lyford:110
lifting liftin:35 listing:40 lifton:95 living:95 loftin:95 gifting:100 lasting:100 leafing:100 leftwing:100 letting:100 lusting:100 shifting:100 sifting:100 listings:110
limit linette:60 lumet:60 leimert:70 limbed:70 limits:70 limned:70 lint:80 remote:80 lamott:85 lamotte:85 limo:95 linnet:95 lynott:95 emmott:100 lammert:100 lema:100 lemma:100 lemme:100 limon:100 limp:100 limped:100
line lyne:0 lysne:0 lime:35 lyme:35 align:45 aline:45 lion:45 lynna:45 lyon:45
lines lynes:0 limes:35 aligns:45 alines:45 lions:45 lyons:45 rhines:55 rhynes:55 rines:55 rynes:55 whines:55 wines:55 wynes:55 lanes:60 lanz:60 lawns:60 leans:60 learns:60 leins:60 lens:60 lenz:60 liens:60 lins:60 linz:60
liquid liquide:60 likud:70 liquids:70 lakewood:90 rickward:95 loquat:110
lit litt:0 lid:25 late:30 leet:30 leete:30 leight:30 leite:30 let:30 lett:30
little littell:0 lyttle:0 liddell:25 liddle:25 ladle:55 liedel:55 rittle:55 whittle:55 lightle:60 litle:60 lytle:60 lintel:70 literal:70 litteral:70 littler:70 littles:70 littoral:70 littrell:70 riddell:80 riddle:80 rydell:80 widdle:80 widell:80 lydall:85
live life:25 alive:45
load lode:0 laud:25 laude:25 lewd:30
locked lucht:25 lucked:25 lopped:55 rocked:55 lacked:60 leaked:60 leicht:60 licht:60 licked:60 liked:60 looked:60 lurked:60 blocked:70 clocked:70 flocked:70 laack:70 laake:70 lat:70 loch:70 locke:70 lockert:70 locket:70 lockett:70 lockout:70
long lung:25 laun:35 lawn:35 along:45
look leuck:30 louque:30 luc:30 luecke:30 luick:30 luke:30 luque:30
looks lukes:30 rooks:55 lacks:60 lakes:60 laux:60 lax:60 leaks:60 leeks:60 lex:60 licks:60 likes:60 locks:60 loucks:60 louks:60 lox:60 lucks:60 luks:60 lurks:60 lux:60 lykes:60 look:70 locus:75 lucas:75 lucus:75
loose luce:0 loos:20 lose:20 luiz:20 luse:20 lohse:30 los:30 lueth:40 luth:40 loise:45
low loe:0 loh:0 lowe:0 law:25 leu:30 lew:30 lieu:30 loo:30 lou:30 louw:30 loux:30 lue:30
lubricated lubricating:100
lug lague:25 leg:25 legg:25 legge:25 log:25 logue:25 luck:25 lucke:25 luk:25
lugs lags:25 logs:25 lucks:45 luks:45 lux:45 rugs:55 leagues:60 lacks:70 laux:70 lax:70 lex:70 locks:70 lox:70 lug:70 luz:70 plugs:70 slugs:70 laabs:80 labs:80 lads:80 lauds:80 loads:80 lobes:80 lobs:80
main maine:0 mane:0 mayne:0 meyn:0 mean:30 mein:30 meine:30 men:30 menn:30 menne:30 mien:30 mihn:30 min:30 minh:30 maim:35 mame:35 mayme:35 mahan:45 mahon:45 maina:45 mayhan:45
make mech:30 meck:30 meek:30 mic:30 mick:30 micke:30 naik:35
matted matott:25 mattered:40 mated:60 meted:60 netted:60 muttered:65 masted:70 matta:70 madog:80 muddied:80 moded:85 added:95 knighted:95 knitted:95 knotted:95 mehta:95 melted:95 noted:95 batted:100 chatted:100 magid:100 massad:100 matic:100 mattick:100
max macks:0 macs:0 maxx:0 meckes:25 mex:25 knacks:35 maggs:45 mags:45 maxa:45 maps:55 mats:55 mattes:55 matts:55 matz:55 makes:60 meeks:60 mix:60 mocks:60 mokes:60 necks:60 nex:60 amax:70 axe:70 emacs:70
maximum maxima:70 maximal:100 maximus:100
mean mein:0 meine:0 mien:0 main:30 maine:30 mane:30 mayne:30 men:30 menn:30 menne:30 meyn:30 mihn:30 min:30 minh:30 meme:35 nein:35 nene:35 ameen:45 ammeen:45 meehan:45 mena:45 mina:45
meant mente:0 mandt:25 mend:25 mende:25 mundt:25 munt:25 mint:30 manned:50 mund:50 maned:55 mont:60 mount:60 amend:70 ent:70 manatt:70 manta:70 mehnert:70 men:70 menn:70 menne:70 menter:70 mento:70 mentz:70 met:70
measured majored:60 measure:70 mesched:90 natured:95 echard:100 measures:100 mefferd:100 mefford:100 mescher:100
measures mushers:55 majors:60 measure:70 mergers:90 meshes:90 natures:95 matches:95 mattias:95 maiers:100 mayers:100 mayors:100 measured:100 medders:100 meers:100 mescher:100 messrs:100 midges:100 mssrs:100
meg mag:25 mech:25 meck:25 mug:25 mig:30 neg:35 mega:45
meg'd mugged:25 nagged:60 egged:70 magda:70 med:70 meg:70
megged mugged:25 nagged:60 egged:70 magda:70 med:70 meg:70
megger meger:0 magar:25 mager:25 mcgirr:25 mugger:25 meager:30 meigher:30 naeger:35 mega:40 macher:50 makar:50 mccur:50 maeder:55 maker:55 meaker:55 medar:55 meeker:55 mauger:60 moger:60 necker:60 nager:65 nigger:65 meca:65 mecca:65
megohm mccolm:50 mccomb:50 mecum:50 meghan:60 macomb:80 mccone:85 mchone:85 mckone:85 mckown:85 mechem:85 magan:90 magoon:90 meegan:90 megan:90 meighan:90 eggum:95 mega:95
megohms mccombs:75
megs meggs:0 maggs:25 mags:25 mugs:25 migs:30 negs:35 meckes:45 mex:45 knaggs:60 nags:60 eggs:70 macks:70 macs:70 max:70 maxx:70 meg:70 mez:70 makes:75 meeks:75 mix:75 muds:80 necks:80 nex:80
melted melded:25 malted:60 molded:85 mellott:95 mellowed:95 belted:100 melton:100
mercury margory:95 mccurry:110
meter metre:0 meader:25 meador:25 meder:25 meeder:25 metter:30 mettur:30 neater:35 meta:40 mita:40 mader:55 maeder:55 meaker:55 medar:55 meeker:55 mahtar:60 mater:60 matter:60 meaty:60 miter:60 motor:60 motter:60 mutter:60 neider:60
metering mitering:60 motoring:60 muttering:60 meeting:70 murdering:85 nattering:95 neutering:95 mating:100 mentoring:100 meyering:100 petering:100 teetering:100
micro macro:60 makro:60 microbe:70 micros:70 miko:70 magro:85 mccraw:85 majka:95 mica:95 micah:95 micron:95 myra:95
micron microns:70 mccrone:85 migraine:85 micro:95 myren:95 myron:95 micom:105 nikon:105
microns micron:70 migraines:85 micros:95
mics nikes:35 mikus:45 mites:55 macks:60 macs:60 makes:60 max:60 maxx:60 meckes:60 meeks:60 mex:60 mix:60 mocks:60 mokes:60 meiss:70 mice:70 mike:70
middle maidel:30 medal:30 meddle:30 medel:30 meidl:30 medulla:45 mittal:50 metal:55 mettle:55 knittel:60 knittle:60 madel:60 madl:60 modal:60 model:60 muddle:60 nidal:60 nedel:65 needle:65 neidl:65 migdal:70 mindel:70 schmidl:70 metall:80
mike majka:45 mica:45 micah:45
min mihn:0 minh:0 main:30 maine:30 mane:30 mayne:30 mean:30 mein:30 meine:30 men:30 menn:30 menne:30 meyn:30 mien:30 mihm:35 mim:35 ming:35 minna:45
mind mined:0 maned:60 manned:60 maund:60 mend:60 mende:60 moaned:60 monde:60 mound:60 mund:60 minder:70 minds:70 mine:70 minored:70 ninad:80
minimum minimal:100
minute minot:0 minott:0 mynatt:0 minette:25 mint:45 manatt:60 minet:60 minit:60 monit:60 ninette:60 mehmet:65 memmott:65 minerd:65 mehnert:70 minna:70 minutes:70 meant:75 mente:75 manette:85 monette:85 minta:90 mainard:95 mamet:95 maynard:95
minutes mints:45 mintz:45 minot:70 minott:70 minute:70 mynatt:70 meents:75 mentz:75 minarets:95 minette:95 menace:100 midgets:100 millets:100 minas:100 mantz:105 meints:105 monts:105 montz:105 mounts:105 mountz:105 muntz:105
more mohr:0 mor:0 morr:0 maher:25 mahr:25 mar:25 marr:25 meagher:25 knorr:35 nohr:35 nor:35 mawr:40 maura:45 mora:45 morra:45
motor mahtar:25 mater:25 moder:25 motter:25 mutter:25 mota:40 matter:60 meter:60 metre:60 metter:60 mettur:60 miter:60 moti:60 moto:60 notter:60 nutter:60 neuter:65 mata:65 moat:70 molter:70 moster:70 mote:70 motors:70 motzer:70
moved mood:70 move:70
moving mervin:95 mervyn:95 nuveen:100 movie:100
nada nadeau:50 nata:50 noda:50 mada:60 nod:70 noto:75
name maim:35 mame:35 mayme:35
nameplate nameplates:70
neutral neutrally:70 neutrals:70 mitral:95 noodle:95 neural:100 notre:100
never nuffer:50 niver:60 ever:70 neva:70 nevers:70
new gnu:0 knew:0 nau:30 neault:30 noe:30 noh:30 moo:35 moue:35 anew:45
next nixed:30 maxed:60 mixed:65 mixte:65 annexed:70 knecht:70 necked:70 necks:70 nest:70 neste:70 nex:70 akst:95 axed:95 axt:95 knacks:95 nast:95 anikst:100 hext:100 kekst:100 knicks:100 nicked:100 nicks:100 nist:100 nix:100
nitrogen nitration:90
noisy moisi:55 newsy:60 nosy:60 noise:70 noisier:70 noyes:70 nesci:80 nesi:80 nessi:80 nessie:80
none nuhn:0 nun:0 nunn:0 gnann:25 known:25 naan:25 nan:25 non:25 mun:35 munn:35 numb:35
nope knope:0 knaup:25 knop:25 knopp:25 knoop:30 mope:35
note knode:25 knot:25 knott:25 knowed:25 naught:25 node:25 nott:25 notte:25 nut:25 nutt:25 newt:30 moat:35 mote:35
nothing nothin:60 nathene:65 nothings:70 nursing:80 unearthing:85 gnawing:95 knowing:95 knifing:100 maseng:100 massing:100 messing:100 nudging:100 numbing:100 nutting:100
number member:60 mumper:60 nemir:70 numbered:70 numbers:70 nambi:85 amber:95 ember:95 mumbo:95 mumby:95 cumber:100 humber:100 lumber:100 mamba:100
nut nutt:0 gnat:25 knot:25 knott:25 nat:25 naught:25 net:25 nett:25 note:25 nott:25 notte:25 nudd:25 mutt:35
ohms owns:35 holmes:45 homes:45
oil hoyle:45
only onley:25 ainley:60 conely:70 hunley:70 lonely:70 oley:70 oney:70 homely:80
onto unto:25 undo:50 undue:50 into:60 ondo:80
open obon:25 ubben:50 upon:50 eappen:60 opine:60 upham:60 obyrne:65 copen:70 hoban:70 koeppen:70 opened:70 opener:70 opens:70 owen:70 pun:70 aachen:80 auton:80 okon:80 otten:80
opened append:50 opined:60 open:70 bund:95 bunde:95 obon:95 opland:95 optioned:95 panned:95 pawned:95 penned:95 pond:95 pundt:95 punt:95 upland:95 ohland:100 opener:100 opens:100
options auctions:55 oppens:70 option:70 oceans:95 opens:95 optioned:100
orange oren:70 orren:70 runge:70 ahren:95 aren:95 oran:95 orran:95 aurand:100 grunge:100 orand:100 orens:100 orosz:100
orifice oreffice:85 orefice:85 aureus:95
other thur:45
ounces answers:100 anthes:100 anzus:100
outdoor outdoors:70 outpour:100
outdoors outdoor:70 outdoes:95 outpours:100
output outputs:70 outpost:100
outside outsider:70 outsides:70 outsized:70 outset:85 outsize:100
over ofer:25 ova:40
overflowing overflying:60 overthrowing:95
overload overrode:55 overlaid:60 overflowed:70 overloads:70 overwrote:80 furloughed:95 overlord:95 overwrought:105
packed pact:0 backed:25 pecht:25 packet:45 becht:50 bucked:50 tacked:55 tact:55 peaked:60 peeked:60 perked:60 picht:60 picked:60 piqued:60 pocked:60 poked:60 act:70 bacot:70 pac:70 pachter:70 pack:70 packett:70 pacto:70 pacts:70
pan bahn:25 ban:25 banh:25 bann:25 pen:25 penh:25 penn:25 pun:25 pam:35 pang:35
panel pannell:0 pennel:25 pennell:25 benel:50 bunnell:50 cannell:55 pannill:60 penal:60 pernell:60 pinnell:60 pownall:60 pummel:60 purnell:60 annal:70 annul:70 paneled:70 panels:70 panful:70 pantle:70 banal:75 kennel:80 kennell:80 kuhnle:80 pamela:80
panels canales:55 annals:70 panas:70 panel:70 panelize:70 panfuls:70 pannell:70 kennels:80 tunnels:80 camels:90 banas:95 panoz:95 penalize:95 pencils:95 pennel:95 pennell:95 channels:100 dannels:100 paddles:100 pagels:100 paneled:100 canals:105
pass bass:25 basse:25 pesce:25 pus:25 paff:40 path:40 pathe:40 baz:45 pez:45
pause paws:0 poss:20 baus:25 pas:25 paz:25 pose:25 pows:25 pos:45 pus:45
per pere:0 pur:0 purr:0 bir:25 birr:25 bur:25 burr:25 pera:45 upper:45
percent percents:70 perset:70 poussant:85 person:95 persson:95 pursuant:95 percept:100 persyn:100 peasant:105 ascent:110 assent:110 bessent:110
pink bink:25 behnke:55 benke:55 punk:60 inc:70 ink:70 pic:70 pick:70 pik:70 ping:70 pinker:70 pinkie:70 pinks:70 pinky:70 plink:70 spink:70 pinnock:80
piston basten:55 beaston:55 pistone:55 posten:60 poston:60 pistons:70 pittston:70 baisden:80 bastien:85 baston:85 boston:85 burston:85 teston:85 bissen:95 bisson:95 bitten:95 bitton:95 postum:95 tifton:95 easton:100 estan:100 liston:100 paighton:100 payton:100
pitted petted:30 pitied:30 baited:55 bated:55 petitt:55 pettet:55 pettit:55 pettitt:55 pettitte:55 patted:60 pittard:60 potted:60 pouted:60 putted:60 beaded:80 bedded:80 kidded:80 picket:80 pickett:80 batted:85 betide:85 boated:85 booted:85 padded:85
place plays:20 pless:30 blaese:45 blaise:45 blaize:45 blase:45 blayze:45 blaze:45 pleas:50 plese:50 bless:55 bliss:55 plas:60 plass:60 plasse:60 ploss:60 plus:60 lace:70 pace:70 placed:70 plaits:70 plates:70 play:70 blais:75
placed blessed:55 blest:55 blazed:70 laced:70 paced:70 paste:70 place:70 plait:70 plate:70 pleased:75 policed:75 blaske:80 braced:80 blast:85 blust:85 pressed:85 prest:85 priest:85 plays:90 based:95 baste:95 played:95 leased:100 least:100
plate plait:0 played:25 pleat:30 plett:30 plitt:30 blade:50 plake:55 plead:55 pled:55 platt:60 platte:60 plaut:60 plight:60 plot:60 plott:60 ablate:70 late:70 leight:70 pait:70 pate:70 placed:70 plaits:70 plater:70 plates:70
plugged plucked:50 plagued:60 plug:70 clogged:80 blood:95 bugged:95 lagged:95 logged:95 pegged:95 plagge:95 plaid:95 pled:95 plod:95 plog:95 pluck:95 blacked:100 blocked:100 plugs:100 plumbed:100 slugged:100
points appoints:45 paints:60 pants:60 pentz:60 pints:60 ponts:60 punts:60 pointe:70 bantz:85 bentz:85 bintz:85 buntz:85 pointers:90 joints:100 pointer:100 pointy:100 poynter:100
pole poehl:0 pohl:0 poll:0 boal:25 boehl:25 bohl:25 bole:25 boll:25 bowl:25 buol:25 pahl:25 pall:25 paul:25 paule:25 paull:25 pol:25 puhl:25 pool:30 poole:30 poul:30 pull:30 poel:45
poles polls:0 pols:0 polce:20 boals:25 boles:25 bolles:25 bolls:25 bolz:25 bowles:25 bowls:25 paules:25 pauls:25 pools:30 pulls:30 puls:30 pulse:45 bahls:50 balls:50 balz:50 bawls:50 bulls:55 coals:55 coles:55 kohls:55
position possession:30 opposition:70 positioned:70 positions:70 petition:100 pezeshkan:100 physician:100 possessions:100 causation:110
pound bound:25 pained:60 panned:60 pawned:60 penned:60 pined:60 pinned:60 pond:60 abound:70 lbs:70 pounder:70 pounds:70 count:80
pounds lbs:0 bounds:25 ponds:60 abounds:70 pound:70 pounders:70 bands:85 bends:85 binds:85 bonds:85 bownds:85 bunds:85 pounce:90 bound:95 counts:100 hounds:100 kountz:100 mounds:100 pounder:100 rounds:100 sounds:100 zounds:100
power bauer:25 bougher:25 bower:25
power's powers:0 bauers:25 bowers:25 towers:55 payers:60 pyres:60 hours:70 ours:70 perz:70 powders:70 power:70 purrs:70 powis:80
present pleasant:55 prisoned:55 prizant:55 peasant:70 presenter:70 presents:70 crescent:75 prescient:90 presson:90 besant:95 presence:100 prison:100
pressure prescher:0 brasher:50 preacher:60 prusha:65 prussia:65 pressured:70 pressures:70 bratcher:80 crusher:80 bridger:85 britcher:85 krischer:85 krisher:85 pleasure:85 pledger:85 pletcher:85 pletscher:85 treasure:85 beshore:95 rusher:95 prucha:95 drescher:100 dresher:100 fresher:100
pressures brashers:50 preachers:60 precious:60 prescher:70 pressure:70 pressurize:70 crushers:80 braziers:85 bridgers:85 pleasures:85 treasures:85 creches:95 pressured:100 brushes:110 prayers:110
pretty priddy:25 pretti:30 bridie:50 brydie:50 preddy:55 prouty:60 parretti:70 peretti:70 pity:70 prettier:70 pretties:70 printy:70 pritt:70 brady:80 bready:80 brickey:80 brodie:85 prideaux:85 prodi:85 platy:85 preppie:85 preppy:85 treaty:85 praetor:90
primary primaries:70
propane procaine:55 protein:85 probing:90 propping:90 profane:100 brattain:105
protection production:50 protections:70 projection:100
proved approved:45 proofed:50 prove:70 prude:70 braved:85 brewed:95 brood:95 proof:95 pruett:95 proves:100 pruned:100
proven previn:60 proving:95 provance:100 provant:100 provence:100 pruden:100 roven:100 peruvian:110
proves approves:45 proofs:45 prove:70 braves:85 preuss:90 pruess:90 brews:95 bruise:95 bruse:95 proof:95 provus:95 grooves:100 pros:100 prose:100 proved:100 prunes:100
psi sai:0 sigh:0 fae:40 fye:40 phi:40 phy:40 thigh:40 thy:40
puffed cuffed:55 toughed:55 tuft:55 tufte:55 bused:65 bussed:65 bust:65 passed:65 past:65 pest:65 post:65 buffet:70 puff:70 putt:70 calfed:80 coughed:80 pursed:80 taft:80 tefft:80 toft:80 tofte:80
pull bull:25 poehl:30 pohl:30 pole:30 poll:30 pool:30 poole:30 poul:30
pulled polled:30 pooled:30 bold:55 bowled:55 paled:60 peeled:60 piled:60 pull:70 boldt:80 bolte:80 boord:80
pulling poling:30 polling:30 pooling:30 pullin:35 bohling:55 boling:55 bolling:55 bowling:55 pauling:60 pawling:60 pearling:60 peeling:60 piling:60 pilling:60 polin:65 uehling:70 bailing:85 baling:85 balling:85 behling:85 belling:85 berling:85 billing:85 boiling:85
pulls puls:0 bulls:25 poles:30 polls:30 pols:30 pools:30 polce:50 boals:55 boles:55 bolles:55 bolls:55 bolz:55 bowles:55 bowls:55 pails:60 pales:60 pals:60 paules:60 pauls:60 pearls:60 peels:60 pels:60 pelz:60 perls:60
pump bump:25 pomp:25 kump:55 pimp:60 plump:70 pompa:70 pumped:70 pumps:70 pup:70 camp:80 comp:80 kamp:80 kampe:80 kemp:80 kempe:80 komp:80 tamp:80 temp:80
purple burble:50 percle:55 pirkl:55 pirkle:55 pirtle:55 purtell:55 purtle:55 papal:60 paypal:60 people:60 peppel:60 pepple:60 poppell:60 popple:60 purpa:70 purples:70 berkel:80 birchall:80 birkel:80 birtle:80 burchell:80 burkel:80 burkle:80 kerbel:80
pushed poached:60 push:70 put:70
put pote:30 puett:30
puts puetz:30 boats:55 boots:55 bootz:55 paetz:60 pates:60 pats:60 patz:60 pautz:60 peets:60 peetz:60 peitz:60 pets:60 petz:60 pietz:60 pits:60 pitts:60 pitz:60 pots:60 potts:60 pouts:60 putts:60 putz:60 pultz:70
putting butting:25 patting:25 petting:25 batting:50 betting:50 boating:50 botting:50 budding:50 padding:50 cutting:55 patin:60 pattin:60 pitting:60 pouting:60 petain:65 abutting:70 puttering:70 bedding:75 boeding:75 bucking:80 coating:80 koetting:80 packing:80 pecking:80
quiet quite:45 clyatt:55 quieter:70 quiets:70 wiatt:70 wyatt:70 guyot:95 quote:95 clyte:100 quart:100 twite:100
ran rahn:0 ranh:0 rann:0 rehn:25 ren:25 renn:25 renne:25 run:25 wren:25 wrenn:25 rahm:35 ram:35 ramm:35 rang:35 rana:45
rated raided:25 redid:55 waited:55 weighted:55 righted:60 rotted:60 routed:60 rutted:60 grated:70 reddit:80 redditt:80 waded:80 readied:85 rettig:85 whetted:85 whitted:85 witted:85 braided:95 traded:95 awaited:100 baited:100 bated:100 dated:100 fated:100
rather wrather:0 raether:25 lather:55 reither:60 reuther:60 roether:60 ryther:60 refer:65 rougher:65 ruffer:65 prather:70 leather:80 raffa:80 weather:80 whether:80 yother:80
reach reeche:0 raiche:30 rich:30 riche:30 riege:30 ritch:30 wretch:30
reading reding:0 raiding:30 redding:30 ridding:30 leading:55 rating:55 weeding:55 rawding:60 riding:60 rodding:60 ruding:60 reddin:65 breeding:70 readings:70 redoing:70 wieting:80 rooting:85 rotting:85 routing:85 writing:85 lading:85 ribbing:85 rigging:85 wading:85
reads reeds:0 raids:30 reds:30 rids:30 raetz:45 reetz:45 rietz:45 leads:55 leeds:55 reebs:55 weeds:55 rhoades:60 rhoads:60 rhodes:60 rides:60 roades:60 roads:60 rodes:60 rods:60 redus:65 breeds:70 creeds:70 eades:70 eads:70
ready reddy:0 redi:0 reti:25 ruddy:25 rady:30 reedy:30 reidy:30 riedy:30 ratty:50 leddy:55 reggy:55 regie:55 radi:60 raeder:60 redder:60 reder:60 redeye:60 rehder:60 rhody:60 rhudy:60 roadie:60 roady:60 roddey:60 roddie:60
really rylee:0 railey:30 reali:30 reiley:30 reilley:30 reily:30 reli:30 rielly:30 riely:30 liley:55 lili:55 lilley:55 lilli:55 lillie:55 lilly:55 lily:55 willey:55 willi:55 willie:55 willy:55 wyllie:55 raleigh:60 raley:60 rally:60
reconnected reconnecting:100
recovered rockford:95
red reade:0 redd:0 rad:25 radde:25 ret:25 rhett:25 rud:25 rudd:25 raid:30 rayed:30 reed:30 reid:30 rid:30 ried:30 riede:30 wrede:30
refrigerant refrigerants:70
registers adjusters:95
relative relatives:70
relay reali:30 reily:30 rielly:30 riely:30 railey:60 really:60 reiley:60 reilley:60 reli:60 rollei:60 rylee:60 real:70 reel:70 relayed:70 relays:70 replay:70 riehl:70 riel:70
remade remit:55 roommate:85 cremate:95 reamy:100 relayed:100 remained:100 remake:100 repaid:100 rimmed:100
removed remove:70 removes:100
repaired repair:70 rebelled:80 rippled:80 repealed:85 prepared:100 repairs:100 reappeared:105
repeat ribbit:55 repeater:70 repeats:70 ripped:70 rippee:70 rippey:70 rippy:70 lipide:80 rebut:85 repaid:85 lippitt:85 rebate:85 rickett:85 reppert:90 repealed:95 raped:100 reaped:100 receipt:100 repeal:100 repent:100 replete:100 rippetoe:100 trippett:100
replaced replace:70 repressed:85 replays:90 replayed:95 released:100 replete:100 retraced:110
reprogrammed reprogram:70 reprograms:100
reseated refitted:70 receded:85 restated:100 wrested:100 reasserted:105
reset reseed:55 racette:60 receipt:60 rosette:60 preset:70 refit:70 resets:70 recede:85 lisette:85 rosete:90 russet:90 russett:90 recent:95 risa:95 bresette:100 bressette:100 brissette:100 raced:100 recessed:100 reffett:100 reffitt:100 resell:100 rest:100 restate:100
residual residuals:70
resistance resistence:0 resistant:100
restored restore:70 restart:80 retard:95 restorer:100 restores:100
resume presume:70 resumed:70 resumes:70 rhizome:90 reassume:95 resign:95 risen:95 reso:100 rizzo:100
return ryton:40 written:40 retain:60 ridden:65 retton:70 returned:70 returnee:70 returns:70 ritter:70 retin:90 ridder:95 litten:95 litton:95 lytton:95 raden:95 redden:95 redone:95 ricken:95 rippon:95 whiton:95 whitten:95 whitton:95 witten:95 witton:95
reversing revising:80 refering:95 referring:95 rehearsing:100 reverses:100 reverting:100
rinsed winced:55 rindt:70 rinse:70 rist:70 wrist:70 kinst:100 minced:100 raced:100 ranft:100 rent:100 rest:100 wrest:100
rising reising:20 risin:35 arising:40 raising:60 razing:60 rosing:60 rousing:60 risinger:70 leising:75 racing:80 rossing:80 icing:90 pricing:90 raisin:95 rhizome:95 arousing:100 reiling:100 rhyming:100 riding:100 sizing:100 writhing:100 writing:100
rotor roder:25 roeder:25 rotter:25 rutter:25 rooter:30 router:30 rueter:30 ruiter:30 ruter:30 rota:40 rudder:50 roecker:55 roeper:55 roper:55 ruder:55 rater:60 reiter:60 reitter:60 retter:60 reuter:60 reutter:60 rhoto:60 righter:60 riter:60
rough ruf:0 ruff:0 raf:25 raff:25 ref:25 reff:25 reph:25 roff:25 roffe:25 rus:40 russ:40 russe:40
run rahn:25 ran:25 ranh:25 rann:25 raun:25 rehn:25 ren:25 renn:25 renne:25 rhone:25 roan:25 roane:25 roen:25 rohn:25 ron:25 rone:25 ronne:25 wren:25 wrenn:25 rum:35 rung:35 wrung:35
running ronning:25 rahming:60 raining:60 ramming:60 reigning:60 reining:60 roaming:60 ronin:60 runnings:70 lanning:80 lenning:80 loaning:80 wenning:80 yawning:80 earning:85 ronayne:90 awning:95 branning:95 brenning:95 drenning:95 droning:95 froning:95 groaning:95 owning:95
runs rans:25 ranz:25 rens:25 renz:25 rums:35 rungs:35 rance:45 lunz:55 ones:55 younes:55 raines:60 rains:60 rams:60 ranes:60 raynes:60 reigns:60 reines:60 reins:60 rhines:60 rhynes:60 rines:60 roams:60 romes:60 roms:60
same sejm:0 seam:30 seem:30 siem:30 sim:30 simm:30 sym:30 sain:35 saine:35 sane:35 seine:35 fame:40 fayme:40
satisfied satisfy:70
say saye:0 seay:0 cie:30 sci:30 sie:30 sieh:30 fay:40 faye:40 fey:40 they:40 asay:45 sieja:45
says cees:30 saez:30 sais:30 saiz:30 seas:30 sease:30 sees:30 seese:30 seize:30 sies:30 fez:40 sas:45 sass:45 sasse:45 sus:45 suss:45
scratch screech:60 krach:70 scratched:70 scratchy:70 stretch:80 scrooge:90 crutch:95 kretsch:95 scrunch:95 sketch:95 crash:100 scragg:100 scram:100 scrap:100
screen scream:35 spreen:55 crean:70 screened:70 screener:70 screens:70 skeen:70 skene:70 sprain:85 strain:85 stream:90 green:95 greene:95 scram:95 crain:100 craine:100 crane:100 crayne:100 krain:100 krane:100 krein:100 kren:100 krenn:100 screech:100
screws skewes:55 skews:55 crewes:70 crews:70 cruise:70 cruse:70 cruz:70 cruze:70 kruse:70 screw:70 spruce:75 cruce:90 groos:95 accrues:100 crose:100 crows:100 kroes:100 kroeze:100 screwed:100 screwy:100 scrolls:100 scrooge:100 sgro:100
sealed celled:30 sailed:30 feild:40 field:40 celt:55 silt:55 soiled:60 sold:60 cede:70 cele:70 ciel:70 failed:70 feld:70 felde:70 felled:70 filled:70 seal:70 seale:70 seed:70 seel:70 steeled:70 assailed:75 selda:75
seated seeded:25 sated:30 sighted:60 sited:60 sooted:60 suited:60 fated:70 feted:70 stidd:70 ceded:85 sided:85 sittig:85 sauteed:90 speeded:95 stitt:95 footed:100 meted:100 sainted:100 scented:100 seating:100 seetin:100 sifted:100 skated:100 slated:100
second sickened:30 succumbed:60 seconds:70 sectioned:70 thickened:70 secunda:75 scanned:95 slackened:95 beckoned:100 reckoned:100 selland:100 sequined:100 sicken:100
secondary secondaries:70
section suction:25 faction:65 fiction:70 sectioned:70 sections:70 session:70 affection:85 action:95 sanction:95 seckman:100 sexson:100 sicken:100 flexion:110
sections factions:65 fictions:70 section:70 sessions:70 affections:85 actions:95 sanctions:95 suction:95 sectioned:100
seeing saying:30 sawing:60 sewing:60 sighing:60 sowing:60 suing:60 ceasing:70 ceding:70 ceiling:70 sealing:70 seating:70 seeding:70 seeking:70 seeling:70 seeming:70 seeping:70 seething:70 seizing:70 sieling:70 sing:70 singh:70 skiing:70
seized ceased:45 sized:60 cede:70 cees:70 eased:70 fazed:70 phased:70 saez:70 seas:70 sease:70 seed:70 sees:70 seese:70 seize:70 sies:70 sneezed:70 cist:75 cyst:75
service searfoss:25 servaas:25 surface:25 serfass:50 servis:60 serviss:60 servers:60 serves:65 serfs:70 surveys:80 cephus:85 surfers:85 servo:95 circus:100 gervase:100 nervous:100 servam:100 servan:100 servile:100
set sette:0 said:25 sat:25 sate:30 seat:30 sit:30 fett:40 fette:40 ceta:45 zed:45
shaft shift:60 aft:70 schadt:70 schaff:70 schaffert:70 shaff:70 shafts:70 shatt:70 shoved:75
she shi:0 shieh:0 shih:0 sze:0 chea:30 chee:30 chez:30 jee:30 jie:30 schey:30 shay:30 shea:30 shia:45 shiah:45
shell shall:25 shull:25 chell:30 gel:30 gell:30 jell:30 scheel:30 scheele:30 schiel:30 schiele:30 schill:30 shale:30 shiel:30 shill:30
shocked shucked:25 chalked:55 choked:55 chucked:55 joked:55 shopped:55 schacht:60 shirked:60 schaack:70 schaadt:70 schoch:70 schock:70 schott:70 shaak:70 shock:70 shot:70 shott:70 szot:70 szott:70 jogged:80
short shortt:0 schardt:25 shored:25 shard:50 chart:55 jorde:55 schork:55 ohrt:70 ort:70 schor:70 schorr:70 shor:70 shore:70 shorr:70 shorter:70 shorts:70 shorty:70 shortz:70 chard:80 charred:80 jarred:80 scharp:80 schult:80 schulte:80
shorted shortest:95 courted:100 ported:100 shorting:100 shorty:100 sorted:100 jolted:110 shirted:110
should schuld:0 shooed:30 showed:30
show chau:0 schau:0 hsia:25 sha:25 shah:25 shaw:25 cho:30 choe:30 hsu:30 joe:30 joh:30 schoo:30 schou:30 schue:30 schuh:30 shew:30 shiu:30 shoe:30 shoo:30 shu:30 shue:30 showa:45
showing chewing:60 schering:60 scheuring:60 schuring:60 shying:60 owing:70 shing:70 showings:70 xing:70
shows chose:30 joes:30 jos:30 shoes:30 shas:45
shut schut:0 schutt:0 shutt:0 schaadt:25 schadt:25 schaut:25 schott:25 shatt:25 shot:25 shott:25 szot:25 szott:25 jut:30 shirt:40
side seid:0 seide:0 sighed:0 syed:0 cite:25 sight:25 site:25 fide:40 aside:45 zeit:45
sides fides:40 asides:45 cites:45 seitz:45 sights:45 sites:45 cedes:60 seeds:60 sids:60 suds:60 seid:70 seide:70 seiders:70 side:70 siders:70 sighed:70 sighs:70 size:70 slides:70 syders:70 syed:70
single singel:0 finckle:65 finkel:65 finkle:65 ingle:70 sigel:70 sigl:70 singled:70 singler:70 singles:70 swingle:70 zingler:90 cymbal:90 symbol:90 fencl:95 seagal:95 sichel:95 sickel:95 sickle:95 sinkhole:95 bingel:100 bingle:100 dingel:100 dingell:100
sitting seating:30 setting:30 fitting:40 ceding:55 seeding:55 sipping:55 citing:60 sighting:60 siting:60 suiting:60 seetin:65 fetting:70 sifting:70 slitting:70 spitting:70 sting:70 zipping:75 siding:85 seeking:85 seeping:85 fading:95 feeding:95 sitton:95 skidding:95
size sighs:0 theis:40 thighs:40 zeiss:40
skip skipp:0 skibbe:25 scape:30 skippa:45 skit:55 stipp:55 scoop:60 scope:60 skop:60 skype:60 kip:70 kipp:70 scrip:70 scripp:70 sip:70 sipp:70 skimp:70 skipped:70 skipper:70 skippy:70 skips:70
slash slush:25 flasch:40 flash:40 sledge:55 sludge:55 slosh:60 flesch:65 flesh:65 flush:65 flach:70 lasch:70 lash:70 sash:70 slashed:70 slasher:70 splash:70
slowly slyly:60 lowly:70 slowey:70 soley:70 soli:70 solie:70 swalley:80 lallie:95 lawley:95 lolley:95 lolli:95 lolly:95 lulie:95 sahli:95 solley:95 sollie:95 solly:95 sullie:95 sully:95 scioli:100 smoley:100
small smull:25 smail:60 smale:60 smeal:60 smell:60 smile:60 mall:70 maul:70 maule:70 maull:70 mol:70 saemaul:70 sall:70 saul:70 smaller:70 smalls:70
snugged snagged:25 snubbed:55 snug:70 snacked:75 nagged:95 sagged:95 snag:95 snog:95 snowed:95 snuck:95 slugged:100 snuggs:100
sorry saari:0 sari:0 zary:20 sorey:25 sahli:55 solley:55 sollie:55 solly:55 cieri:60 sarra:60 sarraj:60 sarro:60 seery:60 siri:60 sirri:60 sorrow:60 foree:65 forie:65 forrey:65 forry:65 zaria:65 ari:70 saar:70 sabry:70
source sorce:0 soars:20 sores:20 force:40 forse:40 zorz:40 sars:45 sorus:45 fours:60 czars:65 farce:65 sarff:65 sauce:70 saur:70 soar:70 soares:70 sor:70 sore:70 sorice:70 soros:70 sorts:70 soss:70 salls:75 salz:75
speed spade:30 spaid:30 spayd:30 spayde:30 spayed:30 sped:30 skied:55 spate:55 speight:55 spit:55 steed:55 spied:60 spud:60 spurred:60 cede:70 peed:70 seed:70 speeder:70 speeds:70 speedy:70 spie:70 skeat:80 skeet:80 skeete:80
spin spain:30 skin:55 spahn:60 span:60 spann:60 spawn:60 spine:60 spohn:60 spoon:60 spun:60 spurn:60 aspin:70 pin:70 pinn:70 sin:70 sinn:70 spinner:70 spinney:70 spins:70 syn:70 spina:75
spinning spanning:60 spawning:60 spurning:60 pinning:70 sinning:70 staining:85 skimming:90 stinging:90 binning:95 spamming:95 penning:100 spearing:100 spending:100 spiffing:100 spilling:100 spinney:100 spitting:100 spraining:100 pinging:105 singing:105 springing:105 finning:110 thinning:110
spins spence:50 spens:50 skins:55 spans:60 spawns:60 spines:60 spoons:60 spurns:60 pins:70 sins:70 spin:70 spinners:70 skains:85 skeens:85 skeins:85 staines:85 stains:85 stenz:85 stiens:85 since:90 zins:90 stings:90 beens:95 binns:95
splice supplies:65 slice:70 spice:70 spliced:70 plies:90 spies:90
spliced sliced:70 spiced:70 splice:70
split splitt:0 splat:60 plitt:70 slit:70 spit:70 splint:70 splits:70 splitter:70 slid:95 sublett:95 plait:100 plate:100 pleat:100 plett:100 slate:100 sleet:100 spate:100 speight:100 sublet:100
spot spud:50 scot:55 scott:55 spock:55 staat:55 stott:55 spat:60 spate:60 speight:60 spight:60 spit:60 spite:60 spout:60 spurt:60 eyespot:70 pot:70 pott:70 spa:70 spada:70 spots:70 spotter:70 spotts:70 spotty:70 sprott:70
square squire:60 scare:70 skare:70 squared:70 squares:70 swear:70 squeal:85 queer:100 squier:100
squirrel squirreled:70 squirrels:70 squall:95 squeal:105
stage steege:30 stege:30 stich:60 stitch:60 stooge:60 sage:70 staged:70 stager:70 stay:70
stain steen:30 sten:30 stene:30 skein:55 spain:55 stan:60 stann:60 stearn:60 stearne:60 stein:60 stern:60 sterne:60 stine:60 stirn:60 stone:60 stun:60 sturn:60 styne:60 steam:65 stem:65 stemm:65 sting:65 sain:70 saine:70
standing sanding:70 standings:70 stranding:70 spending:80 sending:95 standen:95 stunning:95 tending:95 stanching:100 standish:100 sandin:105 astounding:105
stands sands:70 stand:70 stentz:70 strands:70 stunts:70 stuntz:70 spends:80 stance:90 sends:95 stant:95 stenz:95 studds:95 studs:95 stunned:95 stuns:95 tends:95 standa:100 stander:100 standre:100 astounds:105 stints:105
start starred:25 stored:50 starck:55 stark:55 starke:55 staar:70 staat:70 star:70 starched:70 starr:70 starter:70 starts:70 steuart:70 stott:70 tart:70 tarte:70 tartt:70 scarred:80 sparred:80 sport:80 stoldt:80 stolt:80 stolte:80 storch:80
started sported:80 darted:95 sorted:95 smarted:100 starting:100
stat stet:25 stead:50 stud:50 scat:55 spat:55 stac:55 stack:55 stapp:55 staat:60 state:60 stitt:60 stott:60 stout:60 stoute:60 austat:70 istat:70 sat:70 stacked:70 stadt:70 staffed:70 stant:70 stashed:70 stats:70 statz:70
static statics:70 sadek:95 stadnik:95 tadic:95 stanek:100 stattin:100
status stats:45 statz:45 stetz:70 stratus:70 stutts:70 stutz:70 stutters:85 stratas:90 spats:100 spatz:100 stacks:100 staten:100 staton:100 statton:100 statum:100 staats:105 states:105 steitz:105 stites:105 stitz:105 stoots:105 stotts:105 stotz:105 sturtz:105
steady study:25 sturdy:60 stead:70 steadied:70 steadier:70 teddie:70 teddy:70 stubby:80 stetter:85 stouder:85 spady:85 speedy:85 stader:90 deady:95 sadie:95 seti:95 setty:95 stet:95 stud:95 studied:95 studies:95 studley:95 taddy:95 teti:95
step stepp:0 steppe:0 stapp:25 stupp:25 steep:30 stipp:30 stab:50 stub:50 stubbe:50 staib:55 stec:55 stech:55 steck:55 steeb:55 steib:55 stet:55 staup:60 stipe:60 stoop:60 stop:60 stoup:60 cep:70 sep:70 sepp:70
stiff steffe:30 steph:30 stief:30 stith:40 stys:40 skiff:55 stave:55 steve:55 stieve:55 staff:60 staph:60 stauff:60 stoff:60 stough:60 stuff:60 stiffed:70 stiffer:70 stiffs:70 tiff:70 stefa:75 stepha:75
still stihl:0 stil:0 stille:0 staehle:30 stale:30 steal:30 steel:30 steele:30 steil:30 stell:30 stelle:30 stiehl:30 skill:55 spill:55 stear:55 steer:55 steere:55 staal:60 stahl:60 stall:60 stile:60 stohl:60 stol:60 stole:60
stop staab:25 staup:25 stobbe:25 stupp:25 staub:50 stub:50 stubbe:50 skop:55 staack:55 staat:55 stock:55 stocke:55 stokke:55 stott:55 stapp:60 steep:60 step:60 stepp:60 steppe:60 stipe:60 stipp:60 stoop:60 stoup:60 sop:70
stopped stocked:55 steeped:60 stepped:60 stooped:60 staat:70 stomped:70 stop:70 stott:70 topped:70 stubbed:75 stalked:80 stoked:80 staab:95 staup:95 stobbe:95 stumped:95 stupp:95 start:100 stopper:100 stops:100 swapped:100
stops staats:55 stocks:55 stotts:55 stotz:55 steppes:60 steps:60 stipes:60 stoops:60 sops:70 staubs:70 stop:70 stubbs:70 stubs:70 topps:70 tops:70 scopes:80 stalks:80 stokes:80 stutts:80 stutz:80 staas:90 stoppers:90 setups:95 soaps:95
straight strait:0 strate:0 streight:0 strayed:25 street:30 streett:30 streed:55 streit:60 strite:60 stroot:60 strout:60 strut:60 state:70 straighter:70 straights:70 straits:70 strater:70 stray:70 strey:70 trait:70 sprayed:80 stride:85 strode:85 stroud:85
strike streich:0 streit:55 stripe:55 strite:55 strack:60 stracke:60 strauch:60 streak:60 streck:60 strick:60 strock:60 stroik:60 stroke:60 stroock:60 struck:60 oestreich:70 streicher:70 streiker:70 striker:70 strikes:70 stryker:70 streib:100 streiff:100 striar:100
stuck stucke:0 staack:25 stac:25 stack:25 stalk:25 stec:25 stech:25 steck:25 stock:25 stocke:25 stoke:25 stokke:25 sterk:40 sturc:40 stag:50 stagg:50 stupp:55 stake:60 steak:60 steuck:60 stick:60 stueck:60 sotak:70 sta:70
sub saab:25 sabb:25 sob:25 sup:25 serb:40
suction section:25 faction:65 action:95 auction:95 sanction:95 sectioned:95 sections:95 session:95 fiction:100 suchan:100 succumb:105 affection:110 function:110
super suber:25 soper:30 suppa:40 zuber:45 sober:55 souter:55 sucre:55 sueker:55 suiter:55 suitor:55 suter:55 sutor:55 sapper:60 soupy:60 supper:60 suba:65 scooper:70 sewer:70 soup:70 spur:70 spurr:70 stupar:70 stupor:70 supers:70
supply supplee:60 apply:70 supplied:70 supplier:70 supplies:70 sublime:95 spry:100
swapped swept:60 swiped:60 swooped:60 swap:70 swapp:70 swat:70 swab:95 swamped:95 swope:95 flopped:95 stopped:100 swapo:100 swaps:100 swatched:100
swinging swimming:35 slinging:55 singing:70 winging:70 slimming:90 swooning:95 flinging:95 stinging:100 swaying:100 swilling:100 switching:100 sinning:105 winning:105
switch swiech:30 swish:30 swatch:60 switched:70 switcher:70 which:70 wich:70 witch:70
switched swished:30 swatched:60 switch:70 swooshed:90 stitched:100 suite:100 sweat:100 sweatt:100 sweet:100 swete:100 swett:100 swiech:100 swift:100 swint:100 swish:100 switcher:100 twitched:100 wished:100
swollen zwahlen:45 solan:70 solon:70 sahlen:95 sullen:95 wahlen:95 wallen:95 wollen:95 stolen:100 woolen:100 woollen:100 solum:105 folan:110
system sissom:70 systems:70 cistern:75 sistine:95 sisto:95 eastham:100 seastrom:100 sefton:105 sison:105 sisson:105 sitton:105 sister:110
tag tagg:0 tagge:0 dag:25 dagg:25 ptak:25 tack:25 tacke:25 tak:25 tegge:25 tug:25
tagged tugged:25 tacked:50 tact:50 tad:70 tadd:70 tag:70 tagg:70 tagge:70 tucked:75 pegged:80
take dake:25 teac:30 teak:30 tec:30 tech:30 teck:30 tek:30 tic:30 tick:30
taken tieken:30 dagan:50 dagon:50 deighan:50 deacon:55 dicken:55 tigon:55 talkin:60 token:60 aken:70 tehan:70 cagan:80 dayton:80 deegan:80 degan:80 degen:80 deighton:80 kagan:80 pagan:80 daikin:85 dakin:85 docken:85 dokken:85 teigen:85
talk tock:25 tuck:25
target argot:70 targets:70 darga:95 tarbert:95 turgut:110
tell tel:0 del:25 dell:25 delle:25 tull:25 tail:30 tale:30 teal:30 teale:30 teall:30 teel:30 teele:30 til:30 till:30
temp tamp:25 timpe:30 damp:50 dump:50 kemp:55 kempe:55 tampa:70 temme:70 tempe:70 temper:70 tempo:70 temps:70 tempt:70 camp:80 kamp:80 kampe:80 kump:80 pump:80
temperature temperatures:70
terminal terminally:70 terminals:70 trunnell:110
terminals terminal:70 terminally:100
terminated germinated:100 terminating:100
test dest:25 taste:30 teast:30 tefft:40 attest:45 testa:45 dust:50 pest:55 teske:55 toast:60 tossed:60 toste:60 deft:65 taft:65 toughed:65 tuft:65 tufte:65 est:70 tess:70 tester:70 testor:70 tests:70 testy:70 tet:70
tests tastes:30 attests:45 dusts:50 pests:55 toasts:60 tufts:65 test:70 texts:70 castes:80 casts:80 desks:80 pasts:80 tasks:80 tusks:80 pastes:85 testers:90 testes:90 debts:95 dest:95 trusts:95 arrests:100 chests:100 eastes:100 fests:100
that's fats:40 satz:40 fettes:65 fetz:65 sets:65 atz:70
thawed thode:25 thought:25 thud:25 saud:40 sawed:40
there's theirs:0 faires:40 fairs:40 fares:40 phares:40 sayres:40 airs:70 ayres:70 errs:70 fears:70 fiers:70 heirs:70 sears:70 seers:70 seres:70 siers:70 their:70
thermal thermo:95 bermel:100 dermal:100 fermoyle:100 kurmel:100 semel:100 semmel:100 siemel:100 thermos:100 thurman:100 thurmon:100 turmel:100
thermostat thermostats:70
tight tide:25 tied:25
tightened tighten:70 titan:70 titanate:95 heightened:100 lightened:100 tightens:100 titans:100 titled:100 toutant:110
time dime:25 tine:35 tyne:35 taima:45
ton tonne:0 done:25 donne:25 dun:25 dunn:25 dunne:25 tan:25 tann:25 tenn:25 tone:25 tonn:25 tongue:35 tung:35 turn:40
tonnage tange:70 tonge:70 damage:85 dunaj:85 tena:95 tench:100 tunnel:100 tunnell:100 turnage:100
tons tonnes:0 dones:25 duns:25 tans:25 tens:25 tones:25 tongues:35 tums:35 tern:40 ternes:40 terns:40 turns:40 tense:45 danz:50 dawns:50 dens:50 denz:50 dons:50 donze:50 kuns:55 kunz:55 kunze:55 puns:55 tambs:60
took tooke:0 tuk:30
top topp:0 dopp:25 tope:25 atop:45
torqued orct:70 talked:70 torque:70 tort:70 torte:70 parked:80 dorch:95 dort:95 target:95 tart:95 tarte:95 tartt:95 tucked:95 forked:100 torched:100
total tuttle:25 tootal:30 tootle:30 toddle:50 topel:55 tattle:60 teitel:60 title:60 tittel:60 tittle:60 turtle:60 tota:70 totaled:70 totalled:70 totally:70 totals:70 dawdle:75 cotelle:80 cottle:80 doodle:80 pottle:80 topol:80 topple:80 dietel:85
touch tuch:0 duch:25 dutch:25 tatsch:25
transformer transform:70 transformers:70 transformed:100 transforms:100
trap trapp:0 trappe:0 trupp:25 drab:50 crap:55 krapp:55 trac:55 track:55 trak:55 trip:60 tripe:60 tripp:60 trippe:60 troop:60 tropp:60 troup:60 troupe:60 rap:70 rapp:70 rappe:70 strap:70 tap:70 tapp:70 tappe:70
tries trice:20 dries:25 cries:55 crise:55 krise:55 pries:55 prize:55 trays:60 trease:60 trees:60 treese:60 troise:60 ries:70 rise:70 thais:70 ties:70 tri:70 tribes:70 trie:70 try:70 kreiss:75 preiss:75 price:75 pryce:75
tripped dripped:25 crypt:55 draped:55 tricked:55 trapped:60 trooped:60 ripped:70 stripped:70 tipped:70 trip:70 tripp:70 trippe:70 trippett:70 tritt:70 dribbed:75 drooped:85 dropped:85 crept:85 prepped:85 trekked:85 dipped:95 drip:95 trib:95 tribbett:95
tripping dripping:25 draping:55 tricking:55 trapping:60 trooping:60 ripping:70 stripping:70 tipping:70 cribbing:80 drooping:85 dropping:85 creeping:85 prepping:85 treating:85 trekking:85 dipping:95 ribbing:95 trupin:95 gripping:100 raping:100 reaping:100 taping:100 traipsing:100 trilling:100
trips dripps:25 drips:25 traipse:30 cripps:55 crips:55 drapes:55 tricks:55 tritz:55 traps:60 troops:60 troupes:60 dribs:70 rips:70 strips:70 tipps:70 tips:70 trip:70 tripp:70 trippe:70 drops:85 drupes:85 creeps:85 crepes:85 creps:85
trying drying:25 crying:55 prying:55 tieing:70 tying:70 drawing:85 dreiling:95 dring:95 driving:95 dyeing:95 dying:95 tryon:95 frying:100 triage:100
tstat istat:100 distad:105
turn dern:25 durn:25 term:35 ton:40 tonne:40
turned termed:35 tunde:40 tanned:60 tend:60 toned:60 tuned:60 dunned:65 earned:70 turn:70 tongued:75
turning durning:25 terming:35 durnin:60 tanning:60 toning:60 tuning:60 dunning:65 earning:70 termine:70 dawning:85 deigning:85 denning:85 dining:85 dinning:85 donning:85 downing:85 taming:95 teaming:95 teeming:95 timing:95 tinnin:95 cunning:95 berning:100 burning:100
turns tern:0 ternes:0 terns:0 terms:35 tonnes:40 tons:40 kearns:55 kernes:55 kerns:55 tans:60 teens:60 tens:60 tines:60 tins:60 tones:60 townes:60 towns:60 tunes:60 tynes:60 dones:65 duns:65 earns:70 stearns:70 sterns:70
unblocked unlocked:70 unplugged:100
unclogged unplugged:80
understood understate:85
undo undue:0 unto:25 onto:50 ando:55 endo:55 ondo:55 under:60 adieu:70 ado:70 anew:70 und:70
unit eunuch:55 unite:60 units:70 unity:70 lumet:90 usenet:95 eunice:100 junot:100 unum:100 yona:100
unlocked unlock:70
unstuck anstett:80 onstott:80 anspach:105
utility futility:70 utilities:70
vacuum vacuumed:70 vacuums:70
vacuumed vacuum:70 vacuums:100
valve val:70 valves:70
vapor faber:50 fabre:50 vater:55 viper:60 vape:70 vapors:70 faker:80 fieber:80
variable variables:70 veritable:100
vents entz:70 events:70 fends:70 vent:70 vets:70 fonts:85 venters:90 ventres:90 ants:95 aunts:95 fence:95 fendt:95 fent:95 fettes:95 fetz:95 frentz:95 funds:95 vance:95 vats:95 bentz:100 cents:100 dents:100 fiends:100 gents:100
verified verify:70 vilified:85 rarefied:100 terrified:100 verifies:100
version virgen:30 aversion:45 vision:60 versions:70 vachon:90 virgin:90 varone:95 persian:100 urchin:100 verdun:100 vernon:100 virden:100 virgins:100
very vary:0 verri:0 verry:0 fairey:25 fairy:25 ferri:25 ferrie:25 ferry:25 fery:25 farrey:50 farry:50 farai:55 veley:55 velie:55 vari:60 varo:60 vera:60 vero:60 aerie:70 airey:70 airy:70 arie:70 ary:70 eyrie:70
visit visitor:70 visits:70 fisette:75 vist:90 ficek:100 vinet:100
volt vault:25 vold:25 volta:45 fault:50 fold:50 volk:55 volpe:55 velte:60 folta:70 oldt:70 olt:70 voell:70 voeltz:70 vogt:70 volts:70 voltz:70 vote:70 folck:80 fooled:80 fuld:80
voltage volta:70 folta:95
volts voeltz:0 voltz:0 folts:25 foltz:25 vaults:25 faults:50 fults:55 fultz:55 folds:70 foulds:70 volt:70 votes:70 feltes:85 felts:85 feltz:85 voelz:90 voles:90 volz:90 faulds:95 folse:95 vault:95 vold:95 boltz:100 colts:100
volume volumes:70
wait waite:0 waitt:0 wayt:0 whate:0 wade:25 waid:25 waide:25 weighed:25 wet:30 wheat:30 whet:30 whit:30 whitt:30 wit:30 witt:30 witte:30 await:45
want wand:25 wont:25 wanta:45 wante:45 wond:50 wonk:55 weant:60 wendt:60 went:60 wente:60 windt:60 wint:60 juan:70 wan:70 wanda:70 wann:70 wants:70 wantz:70 watt:70 wonda:70 lundt:80 lunt:80 runte:80
washed watched:30 wished:60 wash:70 washout:70 watt:70 rushed:80
water lawter:55 walker:55 waiter:60 wetter:60 whiter:60 witter:60 wachter:70 walter:70 wat:70 watered:70 waterer:70 waters:70 watery:70 lauder:80 lotter:80 lutter:80 rotor:80 rotter:80 rutter:80 whopper:80 yachter:80
ways wais:0 weighs:0 wace:20 wease:30 weese:30 wheeze:30 whiz:30 wiese:30 wiz:30
we've weave:0 waive:30 wave:30
weighed wade:0 waid:0 waide:0 wait:25 waite:25 waitt:25 wayt:25 whate:25 wed:30 wedd:30 weed:30 wehde:30 wied:30
welded wielded:30 wilted:55 wedded:70 yielded:85 whetted:95 waded:100 weeded:100 weldin:100 welding:100 weldy:100
went wendt:0 wente:0 wend:25 wende:25 weant:30 windt:30 wint:30 lent:55 rent:55 waned:55 weaned:55 want:60 wont:60 ent:70 schwent:70 wen:70 wenda:70 wentz:70 wet:70 when:70 whet:70 wanat:75 weyandt:75 weyant:75
wet whet:0 wed:25 wedd:25 wehde:25 wait:30 waite:30 waitt:30 wayt:30 whate:30 wheat:30 whit:30 whitt:30 wit:30 witt:30 witte:30
what's whats:0 watts:25 watz:25 wetz:25 werts:40 wertz:40 wirtz:40 worts:40 wurtz:40 lutz:55 ruts:55 rutts:55 rutz:55 waites:60 waits:60 weights:60 weitz:60 whites:60 wits:60 witts:60 witz:60 utz:70 wads:70 wass:70
wheel wail:30 wale:30 welle:30 weyl:30 whale:30 wil:30 will:30 wille:30
where ware:0 wear:0 wehr:0 werre:0 weir:30 wier:30 aware:45
while weil:0 weill:0 wile:0 wyle:0 awhile:45
whip whipp:0 weep:30
white whyte:0 wight:0 wide:25 wyden:25 wiatt:45 wyatt:45
will wil:0 wille:0 wail:30 wale:30 welle:30 weyl:30 whale:30 wheel:30 willa:45
winding wending:60 wounding:60 whining:70 widing:70 wining:70 wanting:85 whiting:95 binding:100 finding:100 minding:100 wilding:100
windings winding:70 winings:70 whitings:95 bindings:100 findings:100
wire wyer:0 wyre:40 weiher:45
wires wyers:0 liars:55 weers:60 weyers:60 ayers:70 swyers:70 whiners:70 whys:70 wies:70 wipers:70 wire:70 wirz:70 wise:70 wurz:70 wyer:70 wyse:70
wiring wiling:55 wareing:60 waring:60 warring:60 wearing:60 quiring:70 wherein:95 firing:100 hiring:100 meiring:100 syring:100 tiring:100 weirich:100 weirick:100 whining:100 whiting:100 widing:100 wining:100 wiping:100
won't wont:0 want:25 wand:50 wond:50 weant:60 wendt:60 went:60 wente:60 windt:60 wint:60 wanta:70 wante:70 loaned:80 lundt:80 lunt:80 runte:80 wonk:80
wrap rap:0 rapp:0 rappe:0 rab:25 rabb:25 rep:25 repp:25 rupp:25 ruppe:25 rappa:45
wrong rong:0 rung:25 wrung:25 raum:35 raun:35
yellow yolo:60 yell:70 yelle:70 yellower:70 yellows:70 lallo:80 lelah:80 leola:80 rallo:80 rella:80
yep yap:25 yapp:25 yup:25 yip:30
yes yass:25
yup yap:25 yapp:25 yep:25 yopp:25
zapped sapped:20 sept:45 zipped:60 apt:70 zap:70 zapp:70 sacked:75 seeped:80 sipped:80 souped:80
zilch zich:70 zil:70 zill:70
`;
