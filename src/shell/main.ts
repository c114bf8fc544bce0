import { writeNumbersAs } from '../formula/show.ts';
import { facesReady } from './look/faces-ready.ts';
import { startTheme } from './look/theme.ts';
import '../../cells/shared/register.ts';
import '../../cells/shared/table-register.ts';
import '../../cells/note/register.ts';
import '../../cells/value/register.ts';
import '../../cells/formula/register.ts';
import '../../cells/table/register.ts';
import '../../cells/pairing/register.ts';
import '../../cells/calls/register.ts';
import '../../cells/tally/register.ts';
import './register.ts';

startTheme();
writeNumbersAs(navigator.language);
// The notebook is read while the faces come, and drawn once, when both are there.
const app = document.createElement('sparewell-app');
void Promise.all([facesReady(), app.read]).then(() => document.body.append(app));
