import './own-scripts.ts';
import { expose } from 'comlink';
import { PoseService } from './pose-service.ts';

expose(new PoseService());
